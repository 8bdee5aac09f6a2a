package servowright.app.page.files;

import java.util.List;
import servowright.engine.known.Problem;

/**
 * The whole text of a file, to be changed.
 *
 * @param text     that the field holds
 * @param mark     of the file that was read
 * @param now      what the file says meanwhile, when somebody else changed it; else empty
 * @param problems with what was written
 */
public record TextForm(String file, String text, String mark, String now, List<Problem> problems) {
    public TextForm {
        problems = List.copyOf(problems);
    }

    /** Lines that the field shows at once. */
    public int rows() {
        return (int) Math.max(12, Math.min(40, text.lines().count() + 2));
    }
}
