package servowright.app.reference;

import java.util.List;
import servowright.app.view.CaseView;
import servowright.app.view.CaseView.LineView;

/** The cases of one worksheet beside what it computes. */
final class ValidationPage {
    private ValidationPage() {}

    static String of(String title, List<CaseView> cases) {
        Table table = Table.of("case", "result", "expected", "tolerance", "computed", "apart", "rests on");
        for (CaseView one : cases) {
            String name = one.name();
            String basis = one.kind() + ": " + one.source() + (one.note().isEmpty() ? "" : ". Note: " + one.note());
            for (LineView line : one.lines()) {
                table.line(name, line.what(), expected(line), tolerance(line), computed(line), apart(line), basis);
                name = "";
                basis = "";
            }
        }
        return "# " + title + "\n\n" + ReferencePages.HEAD + "\n" + summary(cases) + "\n\n" + table.text();
    }

    /** {@code 34 cases, 61 values, 0 outside tolerance.} */
    static String summary(List<CaseView> cases) {
        long values = cases.stream().mapToLong(c -> c.lines().size()).sum();
        return cases.size() + (cases.size() == 1 ? " case, " : " cases, ") + values
                + (values == 1 ? " value, " : " values, ") + outside(cases) + " outside tolerance.";
    }

    static long outside(List<CaseView> cases) {
        return cases.stream()
                .flatMap(c -> c.lines().stream())
                .filter(line -> !line.within())
                .count();
    }

    private static String expected(LineView line) {
        return line.theirs().split("±", 2)[0].strip();
    }

    private static String tolerance(LineView line) {
        String[] parts = line.theirs().split("±", 2);
        return parts.length == 2 ? "± " + parts[1].strip() : "";
    }

    /** A sentence keeps its figures as names until a view shows them; here only its words count. */
    private static String computed(LineView line) {
        return line.ours().replaceAll("\\{[^{}]*}", "…");
    }

    private static String apart(LineView line) {
        return line.within() ? line.difference() : "OUTSIDE " + line.difference();
    }
}
