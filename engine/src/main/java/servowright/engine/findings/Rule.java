package servowright.engine.findings;

import java.util.List;
import servowright.engine.prediction.Predictions;

/** One rule: what it looks at, where its limit lies and why, what to do. Each rule is one file and has one page. */
public interface Rule {
    /** A few plain words joined by hyphens. */
    String id();

    /** Subject of the machine it belongs to. */
    Finding.Area area();

    /** Where the threshold comes from: author, title, year, table; or common practice. */
    String source();

    /** Everything this rule has to say of a machine; nothing when it does not apply. */
    List<Finding> examine(Predictions predictions);
}
