package servowright.app.input.link;

import java.util.List;
import servowright.engine.capture.LinkReport;
import servowright.engine.known.Problem;

/** The interfaces that a text tells of, or what stands in the way. */
public sealed interface LinkResult {
    record Read(List<LinkReport> links) implements LinkResult {
        public Read {
            links = List.copyOf(links);
        }
    }

    record Refused(List<Problem> problems) implements LinkResult {
        public Refused {
            problems = List.copyOf(problems);
        }
    }
}
