package servowright.app.cli;

import servowright.app.view.FindingView;
import servowright.app.view.Markup;
import servowright.app.view.NeedView;
import servowright.app.view.View;

/** Findings in the form that build servers read: what fails is a failure, what is not shown is skipped. */
final class JunitXml {
    private JunitXml() {}

    static String of(View view) {
        Markup xml = new Markup().own("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
        xml.open(
                "testsuite",
                "name",
                view.name(),
                "tests",
                String.valueOf(view.findings().size()),
                "failures",
                String.valueOf(view.counts().fails()),
                "errors",
                "0",
                "skipped",
                String.valueOf(view.counts().notShown()));
        for (FindingView finding : view.findings()) {
            xml.line().open("testcase", "classname", finding.subject(), "name", finding.id());
            switch (finding.verdict()) {
                case FAILS ->
                    xml.leaf(
                            "failure",
                            text(finding),
                            "message",
                            finding.statement().text());
                case NOT_SHOWN -> xml.empty("skipped", "message", text(finding));
                case TIGHT, HOLDS -> xml.leaf("system-out", finding.verdict().words() + "\n" + text(finding));
            }
            xml.close();
        }
        return xml.line().close().line().end();
    }

    private static String text(FindingView finding) {
        StringBuilder text = new StringBuilder(finding.statement().text());
        line(text, finding.reason().text());
        line(text, finding.remedy().text());
        finding.needs().stream().map(NeedView::text).forEach(n -> line(text, n));
        return text.toString();
    }

    private static void line(StringBuilder text, String more) {
        if (!more.isEmpty()) {
            text.append('\n').append(more);
        }
    }
}
