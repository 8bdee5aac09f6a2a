package servowright.app.input.csv;

import java.util.List;
import servowright.engine.known.Problem;

/** What came of summing a file up. */
public sealed interface SummaryResult {
    /** The file was summed up. */
    record Summed(RecordingSummary summary) implements SummaryResult {}

    /** It was not; each problem says what to declare or repair. */
    record Refused(List<Problem> problems) implements SummaryResult {
        public Refused {
            problems = List.copyOf(problems);
        }
    }
}
