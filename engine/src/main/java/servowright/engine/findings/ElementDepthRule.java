package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Mount;

/** A gap to the package says nothing of the field until the depth of the element below its surface is known. */
final class ElementDepthRule implements MountRule {
    @Override
    public String id() {
        return "element-depth";
    }

    @Override
    public String source() {
        return "field of a uniform disc; elements lie 0.2 to 0.6 mm below the surface of a package (recalled)";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, Answer<Mount> mount) {
        if (mount.value().depthStated()) {
            return Optional.empty();
        }
        return Optional.of(Draft.of(this, axis.name())
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of(
                                "depth of the sensing element not stated: {bare} at the package, about {field} at the element")
                        .with("bare", mount.value().bareGap(), "mT")
                        .with("field", mount.value().strongest(), "mT"))
                .because(Phrase.of("the gap ends at the package, the field is read below its surface"))
                .remedy(Phrase.of("state the depth from the data sheet of the sensor"))
                .needs(List.of(new Need(
                        "depth of the element of " + axis.name(),
                        "the drawing of the package in the data sheet; then depth: 0.35 mm")))
                .from(mount)
                .done());
    }
}
