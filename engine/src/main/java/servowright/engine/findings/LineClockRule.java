package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorFigure;
import servowright.engine.prediction.LineStudy;
import servowright.engine.prediction.Predictions;

/** Clock of a serial angle sensor against what the length of its cable allows. */
final class LineClockRule implements Rule {
    private static final double MARGIN = 0.2;

    @Override
    public String id() {
        return "line-clock";
    }

    @Override
    public Finding.Area area() {
        return Finding.Area.MOUNT;
    }

    @Override
    public String source() {
        return "round trip of the cable within half a clock, 5 ns/m (derived); published tables lie within 20 %";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.machine().sensors().values().stream()
                .map(this::judge)
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Finding> judge(Sensor sensor) {
        return LineStudy.fastestClock(sensor)
                .flatMap(fastest -> fastest.fold(a -> Optional.of(answered(sensor, a)), m -> Optional.empty()));
    }

    private Finding answered(Sensor sensor, Answer<Known> fastest) {
        Known clock = sensor.figures().known(SensorFigure.LINE_CLOCK).orElseThrow();
        return Draft.of(this, sensor.name())
                .verdict(Judge.atMost(clock, fastest.value(), MARGIN).verdict())
                .says(Phrase.of("the line is clocked at {clock}, its length allows {fastest}")
                        .with("clock", clock, "kHz")
                        .with("fastest", fastest.value(), "kHz"))
                .because(Phrase.of("the answer comes back later than half a clock, and bits are read one place off"))
                .remedy(Phrase.of("a slower clock, a shorter cable, or a line that measures its own delay"))
                .wouldSettle("the delay of the line", "a scope on clock and data at the drive")
                .atMost(clock, fastest.value(), "kHz")
                .from(fastest)
                .done();
    }
}
