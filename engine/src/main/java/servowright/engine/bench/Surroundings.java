package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;

/**
 * Temperature of a part during a test, as stated or as assumed.
 *
 * @param kelvin      with its uncertainty
 * @param assumptions what was taken without being known
 */
record Surroundings(Known kelvin, List<Phrase> assumptions) {
    private static final double THERMOMETER_HALF_WIDTH_KELVIN = 2;
    private static final double ROOM_HALF_WIDTH_KELVIN = 10;

    Surroundings {
        assumptions = List.copyOf(assumptions);
    }

    /**
     * The temperature that a test states. One without limits gets those of a simple thermometer, one not stated is that of
     * a room; both are common practice without source.
     *
     * @param part in words: {@code magnets}
     */
    static Surroundings of(BenchTest test, TestFigure figure, String part) {
        Optional<Declared> stated = test.figures().get(figure);
        List<Phrase> assumptions = new ArrayList<>();
        if (stated.isEmpty()) {
            assumptions.add(Phrase.of("temperature of the " + part + " not stated in " + test.id()
                            + "; 20 degC ± {limit} K assumed")
                    .with("limit", ROOM_HALF_WIDTH_KELVIN));
            return new Surroundings(
                    Known.of(
                            Quantity.of(20, "degC"),
                            ROOM_HALF_WIDTH_KELVIN / Math.sqrt(3),
                            Source.of(test.id() + " temperature of the " + part),
                            Origin.ASSUMED,
                            "room"),
                    assumptions);
        }
        Known kelvin = stated.get().known();
        if (stated.get().stated().spread() == Stated.Spread.VALUE) {
            assumptions.add(Phrase.of("limits of the temperature of the " + part + " not stated in " + test.id()
                            + "; ± {limit} K assumed (common practice, no source)")
                    .with("limit", THERMOMETER_HALF_WIDTH_KELVIN));
            kelvin = kelvin.withPart(
                    Source.of(test.id() + " thermometer"), THERMOMETER_HALF_WIDTH_KELVIN / Math.sqrt(3));
        }
        return new Surroundings(kelvin, assumptions);
    }
}
