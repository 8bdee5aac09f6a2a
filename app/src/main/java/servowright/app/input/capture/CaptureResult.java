package servowright.app.input.capture;

import java.util.List;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.known.Problem;

/** A capture that was read to its end, or what stands in the way. */
public sealed interface CaptureResult {
    record Read(CaptureSummary summary) implements CaptureResult {}

    record Refused(List<Problem> problems) implements CaptureResult {
        public Refused {
            problems = List.copyOf(problems);
        }
    }
}
