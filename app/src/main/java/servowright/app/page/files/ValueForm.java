package servowright.app.page.files;

import java.util.List;
import servowright.engine.known.Problem;

/**
 * One value of a file, to be written anew.
 *
 * @param path     keys leading to it
 * @param now      what the file says
 * @param value    what the field holds
 * @param mark     of the file that was read
 * @param problems with what was written
 * @param notice   what else is to be said; may be empty
 */
public record ValueForm(
        String file,
        String path,
        String now,
        String value,
        String mark,
        List<Problem> problems,
        String notice,
        String back) {
    public ValueForm {
        problems = List.copyOf(problems);
    }

    /** Last of the keys, as it is spoken. */
    public String label() {
        return path.substring(path.lastIndexOf(" / ") + (path.contains(" / ") ? 3 : 0))
                .replace('_', ' ');
    }

    /** The keys before the last one. */
    public String of() {
        int last = path.lastIndexOf(" / ");
        return last < 0 ? file : path.substring(0, last).replace(" / ", ", ").replace('_', ' ');
    }
}
