package servowright.engine.motor;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * What repeats a certain number of times per turn of a motor with slots and magnets.
 *
 * <p><b>Formula.</b> With Q slots and p pole pairs: lcm(Q, 2p) cogging; Q alone unequal magnets passing the teeth, 2p alone unequal
 * teeth; p, one wave per electrical turn, an offset of a current sensor; 2p, two per electrical turn, unequal gains of the
 * current sensors as well; 6p voltages that are no sines and dead time; 1 and 2 eccentric mounting, encoder or shaft.
 * <b>Valid for</b> three phases. Orders that coincide cannot be told apart by the order alone. <b>Source.</b> Symmetry of
 * slots against poles; offset and gain of current sensors as in D.-W. Chung, S.-K. Sul, "Analysis and compensation of
 * current measurement error in vector-controlled AC motor drives", IEEE Trans. Industry Applications 34 (1998) (recalled).
 */
public enum TurnOrder {
    ONCE("once per turn: eccentric mounting, encoder or shaft"),
    TWICE("twice per turn: encoder out of line, or an oval bearing seat"),
    ELECTRICAL("one per electrical turn: offset of a current sensor, or one odd magnet pair"),
    TWICE_ELECTRICAL(
            "two per electrical turn, as many as magnets: unequal gains of the current sensors, or unequal teeth"),
    SIX_ELECTRICAL("six per electrical turn: back-EMF that is no sine, or dead time"),
    SLOTS("as many as slots: magnets that are not alike"),
    COGGING("least common multiple of slots and magnets: cogging"),
    COGGING_AGAIN("a multiple of the cogging: its shape");

    private final String words;

    TurnOrder(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** All that an order can be; empty where nothing known repeats so often. */
    public static List<TurnOrder> of(int order, OptionalInt polePairs, OptionalInt slots) {
        Require.atLeast("order", 1, order);
        List<TurnOrder> can = new ArrayList<>();
        if (slots.isPresent() && polePairs.isPresent()) {
            int periods = Cogging.of(slots.getAsInt(), 2 * polePairs.getAsInt()).periodsPerTurn();
            add(can, order == periods, COGGING);
            add(can, order > periods && order % periods == 0, COGGING_AGAIN);
        }
        slots.ifPresent(q -> add(can, order == q, SLOTS));
        polePairs.ifPresent(p -> {
            add(can, order == p, ELECTRICAL);
            add(can, order == 2 * p, TWICE_ELECTRICAL);
            add(can, order == 6 * p, SIX_ELECTRICAL);
        });
        add(can, order == 1, ONCE);
        add(can, order == 2, TWICE);
        return can;
    }

    /** Orders that a motor with these slots and magnets has to be expected to show. */
    public static int[] expected(OptionalInt polePairs, OptionalInt slots) {
        IntStream electrical = polePairs.isEmpty()
                ? IntStream.of()
                : IntStream.of(polePairs.getAsInt(), 2 * polePairs.getAsInt(), 6 * polePairs.getAsInt());
        IntStream teeth = slots.isEmpty() ? IntStream.of() : IntStream.of(slots.getAsInt());
        IntStream cogging = IntStream.of();
        if (polePairs.isPresent() && slots.isPresent()) {
            int periods = Cogging.of(slots.getAsInt(), 2 * polePairs.getAsInt()).periodsPerTurn();
            cogging = IntStream.of(periods, 2 * periods, 3 * periods);
        }
        return IntStream.concat(IntStream.concat(cogging, teeth), electrical)
                .distinct()
                .toArray();
    }

    private static void add(List<TurnOrder> can, boolean fits, TurnOrder which) {
        if (fits) {
            can.add(which);
        }
    }
}
