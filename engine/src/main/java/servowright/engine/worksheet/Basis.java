package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Side;
import servowright.engine.quantity.VoltageBasis;

/** The words that say how a figure is measured or contacted, by what an input may take. */
public final class Basis {
    /** How a voltage, or a figure per volt, is measured. */
    public static final List<String> VOLTAGE = words(VoltageBasis.values(), VoltageBasis::words);

    /** How a motor current, or a figure per ampere, is measured. The supply current is none. */
    public static final List<String> CURRENT =
            List.of(CurrentBasis.Q_AXIS.words(), CurrentBasis.PHASE_RMS.words(), CurrentBasis.SIX_STEP.words());

    /** How a winding is contacted. */
    public static final List<String> HOOK_UP = words(HookUp.values(), HookUp::words);

    /** Which side of a gear. */
    public static final List<String> SIDE = words(Side.values(), Side::words);

    /** Every word that is a basis somewhere. */
    static final List<String> ALL =
            both(both(VOLTAGE, words(CurrentBasis.values(), CurrentBasis::words)), both(HOOK_UP, SIDE));

    private Basis() {}

    /** The words of either list. */
    public static List<String> both(List<String> one, List<String> other) {
        List<String> all = new ArrayList<>(one);
        other.stream().filter(word -> !all.contains(word)).forEach(all::add);
        return List.copyOf(all);
    }

    private static <T> List<String> words(T[] values, Function<T, String> word) {
        return Arrays.stream(values).map(word).toList();
    }
}
