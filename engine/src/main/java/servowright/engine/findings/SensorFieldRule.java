package servowright.engine.findings;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Mount;

/** The field at the sensing element, warm and cold, against the field the sensor works in. */
final class SensorFieldRule implements MountRule {
    /** Room for what a model without chamfer and permeability leaves out. */
    private static final double MARGIN = 0.05;

    @Override
    public String id() {
        return "sensor-field";
    }

    @Override
    public String source() {
        return "the sensor's own window; field of a uniform disc; 5 % margin is common practice";
    }

    @Override
    public boolean asksForFigures() {
        return true;
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, Answer<Mount> mount) {
        Optional<Finding> weak = mount.value().least().map(least -> weak(axis, mount, least));
        Optional<Finding> strong = mount.value().most().map(most -> strong(axis, mount, most));
        return Stream.of(weak, strong)
                .flatMap(Optional::stream)
                .min(Comparator.comparing(Finding::verdict).thenComparingDouble(Finding::relativeRoom));
    }

    private Finding weak(AxisPrediction axis, Answer<Mount> mount, Known least) {
        Known field = mount.value().weakest();
        return Draft.of(this, axis.name())
                .verdict(Judge.atLeast(field, least, MARGIN).verdict())
                .says(Phrase.of("{field} at the sensing element when warm, {limit} needed")
                        .with("field", field, "mT")
                        .with("limit", least, "mT"))
                .because(Phrase.of("a weak field is read with noise, and stray fields turn it further"))
                .remedy(Phrase.of("less gap, a thicker or stronger magnet; see gap-window"))
                .wouldSettle("the gap to the element", "the magnitude the sensor reports, with one shim more and less")
                .atLeast(field, least, "mT")
                .from(mount)
                .done();
    }

    private Finding strong(AxisPrediction axis, Answer<Mount> mount, Known most) {
        Known field = mount.value().strongest();
        return Draft.of(this, axis.name())
                .verdict(Judge.atMost(field, most, MARGIN).verdict())
                .says(Phrase.of("{field} at the sensing element when cold, {limit} allowed")
                        .with("field", field, "mT")
                        .with("limit", most, "mT"))
                .because(Phrase.of("a field too strong saturates the channels or their gain control"))
                .remedy(Phrase.of("more gap by shims under every screw, or a thinner magnet; see gap-window"))
                .wouldSettle("the gap to the element", "the magnitude the sensor reports, with one shim more and less")
                .atMost(field, most, "mT")
                .from(mount)
                .done();
    }
}
