package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bus.BitTiming;
import servowright.engine.machine.BusController;
import servowright.engine.machine.ControllerFigure;

/**
 * The bit timing of a declared controller.
 *
 * @param timing    how it cuts a bit
 * @param deviation how far its clock may be off, relative
 */
public record ControllerTiming(BitTiming timing, double deviation) {
    /** A crystal that says nothing of itself. */
    public static final double USUAL_DEVIATION = 100e-6;

    /** From what is declared; nothing when a part is missing, or when the jump is wider than a phase segment. */
    public static Optional<ControllerTiming> of(BusController c) {
        List<Integer> parts = new ArrayList<>();
        for (ControllerFigure f : List.of(
                ControllerFigure.PRESCALER,
                ControllerFigure.PROP,
                ControllerFigure.PHASE_ONE,
                ControllerFigure.PHASE_TWO,
                ControllerFigure.JUMP)) {
            c.figures().known(f).ifPresent(k -> parts.add((int) Math.round(k.si())));
        }
        Optional<Long> clock = c.figures().known(ControllerFigure.CLOCK).map(k -> Math.round(k.si()));
        if (clock.isEmpty() || parts.size() < 5 || parts.get(4) > Math.min(parts.get(2), parts.get(3))) {
            return Optional.empty();
        }
        double deviation =
                c.figures().known(ControllerFigure.DEVIATION).map(k -> k.si()).orElse(USUAL_DEVIATION);
        return Optional.of(new ControllerTiming(
                new BitTiming(clock.get(), parts.get(0), parts.get(1), parts.get(2), parts.get(3), parts.get(4)),
                deviation));
    }
}
