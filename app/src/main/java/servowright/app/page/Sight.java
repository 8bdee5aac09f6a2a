package servowright.app.page;

import java.util.List;
import servowright.app.view.View;
import servowright.engine.known.Problem;

/** What can be seen of a folder: its assessment, or why there is none. */
public sealed interface Sight {
    /** The assessment as every view shows it. */
    record Shown(View view) implements Sight {}

    /** Files that were not accepted, with every problem found. */
    record Refused(List<Problem> problems) implements Sight {
        public Refused {
            problems = List.copyOf(problems);
        }
    }

    /** The reading and computing went on for too long, or was stopped by hand. */
    record Stopped(String why) implements Sight {}
}
