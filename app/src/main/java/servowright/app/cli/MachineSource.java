package servowright.app.cli;

import java.nio.file.Path;
import java.util.List;
import servowright.engine.assessment.Assessment;
import servowright.engine.known.Problem;

/** Reads a machine's folder and assesses it. */
@FunctionalInterface
public interface MachineSource {
    /** An assessment, or why there is none. */
    sealed interface Read {
        /**
         * An assessment.
         *
         * @param notes what should be known about the reading of the files; whole sentences
         */
        record Assessed(Assessment assessment, List<String> notes) implements Read {
            public Assessed {
                notes = List.copyOf(notes);
            }
        }

        /** Input that was not accepted, with every problem found. */
        record Refused(List<Problem> problems) implements Read {
            public Refused {
                problems = List.copyOf(problems);
            }
        }
    }

    Read read(Path folder);
}
