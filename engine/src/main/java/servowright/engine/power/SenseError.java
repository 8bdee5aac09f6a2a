package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * What offsets and unequal gains of three phase-current sensors make of the currents in rotor axes.
 *
 * <p><b>Formula.</b> The space vector (2/3) Σ i_k e^{j 2πk/3} of the readings i_k + o_k has the standing part (2/3) |Σ o_k e^{j 2πk/3}|:
 * seen from the rotor it turns once per electrical turn. Readings g_k I cos(θ − 2πk/3) leave besides the mean of the gains a part
 * (I/3) |Σ g_k e^{j 4πk/3}| that turns backwards: seen from the rotor twice per electrical turn. Where the third current is computed
 * from two, its error is minus the sum of theirs. <b>Valid for</b> any size. <b>Source.</b> Space vector of three phase quantities,
 * amplitude-invariant; derived. With two sensors the same as in D.-W. Chung, S.-K. Sul, "Analysis and compensation of current
 * measurement error in vector-controlled AC motor drives", IEEE Trans. Industry Applications 34 (1998) (recalled).
 */
public final class SenseError {
    private SenseError() {}

    /** Amplitude in rotor axes, once per electrical turn, of three offsets, A. */
    public static double onceAmp(double a, double b, double c) {
        return 2.0 / 3 * vector(a, b, c);
    }

    /** Amplitude in rotor axes, twice per electrical turn, as a share of the current, of three gains. */
    public static double twiceShare(double a, double b, double c) {
        return vector(
                        Require.positive("gain a", a, ""),
                        Require.positive("gain b", b, ""),
                        Require.positive("gain c", c, ""))
                / 3;
    }

    /** The same where the third current is computed from the first two. */
    public static double twiceShareOfTwo(double a, double b) {
        return Math.abs(Require.positive("gain a", a, "") - Require.positive("gain b", b, "")) / Math.sqrt(3);
    }

    /** Length of the sum of three vectors a third of a turn apart. */
    private static double vector(double a, double b, double c) {
        return Math.hypot(a - (b + c) / 2, Math.sqrt(0.75) * (b - c));
    }
}
