package servowright.app.cli;

import servowright.app.view.LinkView;
import servowright.app.view.Sentence;

/** A CAN interface on the terminal. */
final class LinkScreen {
    private static final int LABEL = 16;

    private LinkScreen() {}

    static void show(LinkView link, Screen screen) {
        screen.heading(Wrap.safe(link.file()) + ", interface " + Wrap.safe(link.name()));
        link.rows().forEach((label, words) -> screen.labelled(2, label, LABEL, Sentence.of(Wrap.safe(words))));
        link.remarks().forEach(r -> screen.labelled(2, "look at", LABEL, r));
        link.checks().forEach(c -> screen.labelled(2, c.verdict(), LABEL, c.words()));
        screen.line();
    }
}
