package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.CoverageInterval;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Mount;
import servowright.engine.quantity.Dimension;

/** The shaft turned once by hand, the sensor read. */
final class HandTurnTask implements AxisTask {
    /** A hand stops within this share of a turn (common practice, no source). */
    private static final double HAND = 0.06;

    /** Three switches make six states in an electrical turn. */
    private static final int HALL_STATES = 6;

    @Override
    public TestKind kind() {
        return TestKind.HAND_TURN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.TURNS_READ);
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(Phrase.of(
                "Drive's bridge off, sensor supplied. A mark on the shaft, one turn forwards by hand back to it;"
                        + " the reading logged all the way, its field magnitude too where the sensor tells it."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(Phrase.of(
                "A drive that is enabled by mistake turns the shaft in your hand: bridge off, supply limited."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        List<Expectation> all = new ArrayList<>();
        if (bench.sensor() == SensorKind.HALL_TRIPLE) {
            all.add(bench.bounded(
                    "states of the three switches in one turn",
                    Phrase.of("of the motor shaft"),
                    "",
                    AxisParameter.TURNS_READ,
                    states(bench)));
            return all;
        }
        all.add(bench.bounded(
                "turns read",
                Phrase.of("one turn of the shaft made"),
                "",
                AxisParameter.TURNS_READ,
                AxisBench.between(1 - HAND, 1, 1 + HAND, Dimension.NUMBER, "definition")));
        bench.prediction().mount().ifPresent(mount -> all.add(field(bench, mount)));
        return all;
    }

    private static Outcome<Window> states(AxisBench bench) {
        return bench.motor(MotorParameter.POLE_PAIRS)
                .fold(
                        a -> {
                            double n = HALL_STATES * a.value().si();
                            return AxisBench.between(
                                    n, n, n, Dimension.NUMBER, a.value().from());
                        },
                        m -> m.forAnother());
    }

    /** From the warmest to the coldest air, each end widened by what the mount leaves open. */
    private static Expectation field(AxisBench bench, Outcome<Mount> mount) {
        Outcome<Window> window = mount.fold(
                a -> AxisBench.between(
                        end(a.value().weakest(), -1),
                        (a.value().weakest().si() + a.value().strongest().si()) / 2,
                        end(a.value().strongest(), 1),
                        Dimension.FLUX_DENSITY,
                        "magnet and gap as declared"),
                m -> m.forAnother());
        return bench.bounded(
                "field at the sensor", Phrase.of("warmest to coldest air"), "mT", AxisParameter.SENSOR_FIELD, window);
    }

    private static double end(Known field, int sign) {
        return Math.max(0, field.si() + sign * CoverageInterval.FACTOR * field.standardUncertainty());
    }
}
