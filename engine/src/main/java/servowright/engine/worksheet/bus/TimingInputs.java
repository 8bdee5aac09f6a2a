package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.BitTiming;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;

/**
 * The inputs that make a bit timing.
 *
 * @param prefix before each name; empty for the nominal timing
 */
record TimingInputs(String prefix) {
    static final TimingInputs NOMINAL = new TimingInputs("");
    static final TimingInputs DATA = new TimingInputs("data_");

    List<Input> inputs() {
        String phase = prefix.isEmpty() ? "" : " of the data phase";
        return List.of(
                Input.count(prefix + "prescaler", "clock periods in a quantum" + phase, 1, 1024, "1"),
                Input.count(prefix + "prop", "propagation segment" + phase + ", quanta", 0, 512, "6"),
                Input.count(prefix + "ps1", "phase segment 1" + phase + ", quanta", 1, 512, "1"),
                Input.count(prefix + "ps2", "phase segment 2" + phase + ", quanta", 1, 256, "2"),
                Input.count(prefix + "sjw", "jump width" + phase + ", quanta", 1, 128, "1"));
    }

    /** Names of the inputs, all of them needed. */
    String[] names() {
        return inputs().stream().map(Input::name).toArray(String[]::new);
    }

    /** Adds what a controller cannot have. */
    Contradictions check(Declaration declaration, Inputs in) {
        boolean jump = whole(in, "sjw") > Math.min(whole(in, "ps1"), whole(in, "ps2"));
        return new Contradictions(declaration)
                .when(
                        in.has(prefix + "ps1") && in.has(prefix + "ps2") && jump,
                        prefix + "sjw",
                        "the jump width is longer than a phase segment",
                        "Give at most the shorter phase segment.");
    }

    BitTiming timing(Calculation c) {
        long clock = Math.round(c.given("", "clock").value().si());
        return new BitTiming(
                clock, count(c, "prescaler"), count(c, "prop"), count(c, "ps1"), count(c, "ps2"), count(c, "sjw"));
    }

    private int count(Calculation c, String name) {
        return c.count(prefix + name);
    }

    private int whole(Inputs in, String name) {
        return in.known(prefix + name).map(k -> (int) Math.rint(k.si())).orElse(0);
    }
}
