package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/** Both raw channels over a turn. */
final class ChannelTurnTask implements AxisTask {
    /** Untrimmed channels lie within this share of their amplitude (common practice, no source). */
    private static final double USUAL = 0.10;

    @Override
    public TestKind kind() {
        return TestKind.CHANNEL_TURN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.CHANNEL_OFFSET, AxisParameter.CHANNEL_GAIN, AxisParameter.CHANNEL_QUADRATURE);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.sensor() == SensorKind.SINE_COSINE || bench.sensor() == SensorKind.RESOLVER;
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(Phrase.of(
                "Bridge off. Cosine and sine recorded together, as the converter of the drive sees them, while"
                        + " the shaft is turned slowly by hand through a whole turn or more."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                Phrase.of("Drive disconnected: a motor that is turned makes voltage at its terminals."),
                Phrase.of("Clip a probe on with the supply off: a slip shorts the sensor's supply."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(
                share(bench, "offset of both channels", AxisParameter.CHANNEL_OFFSET, 0),
                share(bench, "cosine larger than sine", AxisParameter.CHANNEL_GAIN, -USUAL));
    }

    private static Expectation share(AxisBench bench, String what, AxisParameter from, double low) {
        Outcome<Window> window = AxisBench.between(
                low,
                (low + USUAL) / 2,
                USUAL,
                Dimension.NUMBER,
                "channels that nobody trimmed, common practice, no source");
        return bench.bounded(what, Phrase.of("raw, nothing taken off"), "%", from, window);
    }
}
