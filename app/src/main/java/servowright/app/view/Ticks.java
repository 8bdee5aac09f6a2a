package servowright.app.view;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/**
 * Ticks of an axis at steps of 1, 2 or 5 times a power of ten.
 *
 * @param from   where the axis begins
 * @param to     where it ends; above {@code from}
 * @param step   between two ticks
 * @param labels one for each tick within the axis, upwards
 */
public record Ticks(double from, double to, double step, List<Tick> labels) {
    /** Where a tick stands and what is written at it. */
    public record Tick(double at, String label) {}

    public Ticks {
        labels = List.copyOf(labels);
    }

    /** An axis that just holds the values; about {@code wanted} ticks. */
    public static Ticks over(double least, double most, int wanted) {
        double low = Math.min(least, most);
        double high = Math.max(least, most);
        if (!Double.isFinite(low) || !Double.isFinite(high)) {
            low = 0;
            high = 1;
        }
        if (high - low <= 1e-9 * Math.max(Math.abs(low), Math.abs(high))) {
            double pad = low == 0 ? 1 : Math.abs(low) * 0.05;
            low -= pad;
            high += pad;
        }
        double step = step((high - low) / wanted);
        return new Ticks(low, high, step, ticks(low, high, step));
    }

    /** The same with both ends moved out to a tick. */
    public static Ticks rounded(double least, double most, int wanted) {
        Ticks tight = over(least, most, wanted);
        double low = Math.floor(tight.from / tight.step + 1e-9) * tight.step;
        double high = Math.ceil(tight.to / tight.step - 1e-9) * tight.step;
        return new Ticks(low, high, tight.step, ticks(low, high, tight.step));
    }

    /** The nearest step not below the one wanted. */
    private static double step(double wanted) {
        double power = Math.pow(10, Math.floor(Math.log10(wanted)));
        for (int digit : new int[] {1, 2, 5}) {
            if (digit * power >= wanted * (1 - 1e-9)) {
                return digit * power;
            }
        }
        return 10 * power;
    }

    private static List<Tick> ticks(double low, double high, double step) {
        List<Tick> ticks = new ArrayList<>();
        int places = Math.max(0, (int) -Math.floor(Math.log10(step) + 1e-9));
        for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++) {
            ticks.add(new Tick(i * step, label(i * step, places)));
        }
        return ticks;
    }

    private static String label(double at, int places) {
        if (Math.abs(at) >= 1e6 || (places > 5 && at != 0)) {
            return String.valueOf((float) at).replace("E", "e");
        }
        BigDecimal rounded = BigDecimal.valueOf(at).setScale(places, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "0" : rounded.toPlainString();
    }
}
