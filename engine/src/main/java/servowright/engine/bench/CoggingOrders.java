package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.CoggingFit;
import servowright.engine.motor.TurnOrder;
import servowright.engine.quantity.Quantity;

/** The orders per turn that stand out of a current over the angle, and what they may come from. */
final class CoggingOrders {
    private static final int SHOWN = 8;

    /** Largest numbers of slots and magnets tried when neither is known. */
    private static final int MOST = 48;

    private static final double LEAST_WINDING_FACTOR = 0.85;

    private final CoggingFit fit;
    private final OptionalInt polePairs;
    private final OptionalInt slots;

    CoggingOrders(CoggingFit fit, Motor motor, OptionalInt polePairs) {
        this.fit = fit;
        this.polePairs = polePairs;
        this.slots = slots(motor);
    }

    static OptionalInt slots(Motor motor) {
        return motor.figures()
                .known(MotorFigure.SLOTS)
                .map(s -> OptionalInt.of((int) Math.round(s.si())))
                .orElse(OptionalInt.empty());
    }

    /** The strongest order; 1 where none stands out. */
    int strongest() {
        return fit.standing() == 0 ? 1 : fit.orders()[0];
    }

    List<Phrase> details() {
        List<Phrase> details = new ArrayList<>();
        details.add(Phrase.of("depends on the position by {pp} from least to largest, {rms} rms")
                .with("pp", Quantity.of(fit.rangeAmp(), "A"), "A")
                .with("rms", Quantity.of(fit.rmsAmp(), "A"), "A"));
        for (int j = 0; j < Math.min(SHOWN, fit.standing()); j++) {
            int order = fit.orders()[j];
            String can = TurnOrder.of(order, polePairs, slots).stream()
                    .map(TurnOrder::words)
                    .collect(Collectors.joining("; or "));
            details.add(Phrase.of("{n} per turn: {A}" + (can.isEmpty() ? "" : ": " + can))
                    .with("n", order)
                    .with("A", amplitude(j), "mA"));
        }
        return details;
    }

    private Known amplitude(int index) {
        return Known.of(
                Quantity.of(fit.mean().amplitude(index), "A"),
                fit.amplitudeStandard(index),
                Source.of("order " + fit.orders()[index]),
                Origin.MEASURED,
                "");
    }

    List<Phrase> remarks() {
        List<Phrase> remarks = new ArrayList<>();
        if (fit.standing() == 0) {
            remarks.add(Phrase.of("no order stands out of the noise: the shaft cogs less than this recording shows"));
        } else if (polePairs.isPresent() && slots.isPresent()) {
            declared(remarks);
        } else {
            candidates(remarks);
        }
        return remarks;
    }

    private void declared(List<Phrase> remarks) {
        int periods = Cogging.of(slots.getAsInt(), 2 * polePairs.getAsInt()).periodsPerTurn();
        if (fit.amplitude(periods) == 0 && fit.amplitude(2 * periods) == 0) {
            remarks.add(Phrase.of(
                            "{slots} slots and {poles} magnets would cog {n} times per turn, which does not stand out; the strongest is {s}")
                    .with("slots", slots.getAsInt())
                    .with("poles", 2 * polePairs.getAsInt())
                    .with("n", periods)
                    .with("s", strongest()));
        }
    }

    /** Slots and magnets that the strongest order allows, those first whose own orders stand out too. */
    private void candidates(List<Phrase> remarks) {
        List<Cogging> all = Cogging.forDetents(strongest(), MOST, MOST, LEAST_WINDING_FACTOR).stream()
                .map(Cogging.Candidate::cogging)
                .filter(c -> polePairs.isEmpty() || c.poles() == 2 * polePairs.getAsInt())
                .filter(c -> slots.isEmpty() || c.slots() == slots.getAsInt())
                .sorted(Comparator.comparingInt((Cogging c) -> -seen(c)))
                .toList();
        if (all.isEmpty()) {
            return;
        }
        Cogging first = all.get(0);
        String others = all.stream()
                .skip(1)
                .limit(3)
                .map(c -> c.slots() + " with " + c.poles())
                .collect(Collectors.joining(", "));
        remarks.add(Phrase.of(
                        "{n} per turn would be the cogging of {slots} slots with {poles} magnets, whose own orders stand out "
                                + "{k} times" + (others.isEmpty() ? "" : "; also possible: " + others))
                .with("n", strongest())
                .with("slots", first.slots())
                .with("poles", first.poles())
                .with("k", seen(first)));
    }

    /**
     * Orders of the speed of a turning shaft.
     *
     * @param speed   orders of its speed
     * @param radPerS mean speed
     */
    static List<Phrase> ofSpeed(CoggingFit speed, double radPerS) {
        List<Phrase> details = new ArrayList<>();
        for (int j = 0; j < Math.min(SHOWN, speed.standing()); j++) {
            int order = speed.orders()[j];
            double angle = speed.mean().amplitude(j) / (order * radPerS);
            details.add(Phrase.of("speed, {n} per turn: {A}; an angle sensor that is off by {e} would show the same")
                    .with("n", order)
                    .with("A", Quantity.of(speed.mean().amplitude(j), "rad/s"), "rad/s")
                    .with("e", Quantity.of(angle, "rad"), "deg"));
        }
        return details;
    }

    private int seen(Cogging c) {
        return (int) IntStream.of(c.poles() / 2, c.poles(), c.slots(), 2 * c.slots())
                .distinct()
                .filter(o -> fit.amplitude(o) > 0)
                .count();
    }
}
