package servowright.app.page;

import java.util.List;

/**
 * What stands around every view.
 *
 * @param title    of the window
 * @param machine  its name
 * @param tally    findings per verdict, in words; empty without an assessment
 * @param subjects across the top
 * @param axes     down the side
 * @param undo     what can be taken back; empty for nothing
 * @param notice   what has just happened; empty for nothing
 * @param cautions hazards that go with this work
 * @param state    number of the last change that is shown
 */
public record Frame(
        String title,
        String machine,
        String tally,
        List<Link> subjects,
        List<Mark> axes,
        String undo,
        String notice,
        List<String> cautions,
        long state) {
    /** A place to go to. */
    public record Link(String title, String address, boolean here) {}

    /**
     * An axis down the side.
     *
     * @param verdict worst one, as its class in the style sheet; empty for none
     * @param words   of the verdict
     */
    public record Mark(Link link, String verdict, String words) {}

    public Frame {
        subjects = List.copyOf(subjects);
        axes = List.copyOf(axes);
        cautions = List.copyOf(cautions);
    }
}
