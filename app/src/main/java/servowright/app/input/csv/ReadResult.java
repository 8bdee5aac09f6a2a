package servowright.app.input.csv;

import java.util.List;
import servowright.engine.known.Problem;
import servowright.engine.recording.Recording;

/** What came of reading a file: a recording, or what stands in the way. */
public sealed interface ReadResult {
    /** The file was read; what was concluded stands in the remarks of the recording. */
    record Read(Recording recording) implements ReadResult {}

    /** The file was not read; each problem says what to declare or repair. */
    record Refused(List<Problem> problems) implements ReadResult {
        public Refused {
            problems = List.copyOf(problems);
        }
    }
}
