package servowright.engine.encoder;

import java.util.Arrays;
import java.util.stream.IntStream;
import servowright.engine.quantity.Require;

/**
 * Angle error without a reference, from a shaft that runs on its own: coasting down or at constant speed its true angle is
 * smooth in time.
 *
 * <p><b>Formula.</b> θ_read(t) = Σ c_j T_j(t) + Σ (c_k cos kθ + s_k sin kθ), T_j Chebyshev polynomials of time up to order P,
 * θ the angle that the polynomial gives, found again {@value #ROUNDS} times. P is raised until two orders more no longer
 * lower the residue. <b>Validity.</b> Speed that truly ripples at an order of the shaft (unbalance, cogging, load) cannot be
 * told from an angle error in one run: see {@link #apart}. Hold the axis upright. <b>Source.</b> Smoothness of inertial
 * motion; the method class of X. D. Lu and others, CIRP Annals 59 (2010) 529 (seen in abstract).
 */
public final class FreeRunFit {
    private static final int ROUNDS = 4;
    private static final int HIGHEST_POLYNOMIAL = 10;

    /** Share by which the scatter must fall for a higher polynomial to be worth taking. */
    private static final double WORTH = 0.01;

    private FreeRunFit() {}

    /**
     * Seeks the order of the polynomial by itself.
     *
     * @param second times, rising
     * @param readRad what the sensor read, with or without whole turns
     * @param orders highest harmonic tried
     */
    public static Calibration of(double[] second, double[] readRad, int orders) {
        Calibration best = of(second, readRad, orders, 1);
        for (int order = 2; order <= HIGHEST_POLYNOMIAL; order++) {
            Calibration next = of(second, readRad, orders, order);
            if (worth(best, next)) {
                best = next;
            } else if (order > lowest(best) + 1) {
                return best;
            }
        }
        return best;
    }

    private static int lowest(Calibration best) {
        return best instanceof Calibration.Fitted fitted ? fitted.polynomialOrder() : HIGHEST_POLYNOMIAL;
    }

    private static boolean worth(Calibration best, Calibration next) {
        return best instanceof Calibration.Fitted old
                && next instanceof Calibration.Fitted fresh
                && fresh.residualSdRad() < (1 - WORTH) * old.residualSdRad();
    }

    /** With a given order of the polynomial; {@link Calibration.Fitted#ordersMissing} tells one that is too low. */
    public static Calibration of(double[] second, double[] readRad, int orders, int polynomialOrder) {
        Require.atLeast("order of the polynomial", 1, polynomialOrder);
        Require.atLeast("highest order", 1, orders);
        if (readRad.length < 3 * (2 * orders + polynomialOrder + 1)) {
            return new Calibration.Refused(Calibration.Reason.TOO_FEW_SAMPLES, readRad.length);
        }
        double[] read = Angles.unwrapped(readRad);
        double[][] chebyshev = chebyshev(second, polynomialOrder);
        HarmonicRegression regression = new HarmonicRegression(chebyshev, read, ReferencedFit.ones(read.length));
        double[] shaft = read;
        HarmonicRegression.Found found = regression.with(ReferencedFit.upTo(orders), shaft);
        for (int round = 0; round < ROUNDS && found.fit().status().converged(); round++) {
            shaft = smooth(found, chebyshev);
            found = regression.with(ReferencedFit.upTo(orders), shaft);
        }
        // Not all regressors run over the turn, so the condition number is that of the harmonics alone.
        double condition = HarmonicRegression.condition(orders, shaft);
        if (!(condition < ReferencedFit.MOST_CONDITION)) {
            return new Calibration.Refused(Calibration.Reason.TRAVEL_TOO_SMALL, condition);
        }
        return ReferencedFit.fitted(regression.pruned(found, shaft), condition, polynomialOrder, 0, 0);
    }

    private static double[] smooth(HarmonicRegression.Found found, double[][] chebyshev) {
        return IntStream.range(0, chebyshev[0].length)
                .mapToDouble(i -> IntStream.range(0, chebyshev.length)
                        .mapToDouble(j -> chebyshev[j][i] * found.free().at(j))
                        .sum())
                .toArray();
    }

    private static double[][] chebyshev(double[] second, int order) {
        double first = second[0];
        double half = (second[second.length - 1] - first) / 2;
        Require.positive("duration", half, "s");
        double[] place = Arrays.stream(second).map(t -> (t - first) / half - 1).toArray();
        double[][] columns = new double[order + 1][];
        for (int j = 0; j <= order; j++) {
            int degree = j;
            columns[j] = Arrays.stream(place)
                    .map(x -> Math.cos(degree * Math.acos(Math.max(-1, Math.min(1, x)))))
                    .toArray();
        }
        return columns;
    }

    /**
     * Tells an angle error from a speed that truly ripples, by one harmonic at several speeds.
     *
     * <p><b>Formula.</b> A torque ripple T_k moves the shaft by T_k/(J k² ω²), an angle error does not depend on speed: each
     * coefficient is a + b/ω², and a is the error of the sensor. The least-squares line through coefficients against
     * 1/ω². <b>Validity.</b> At least two speeds; above resonances and control bandwidth.
     *
     * @param radPerSecond speed of each run
     * @param ripples the same order of each run
     */
    public static Ripple apart(double[] radPerSecond, Ripple... ripples) {
        Require.atLeast("number of speeds", 2, ripples.length);
        double[] inverse = Arrays.stream(radPerSecond)
                .map(w -> 1 / (Require.positive("speed", w, "rad/s") * w))
                .toArray();
        double cosine = HarmonicRegression.intercept(inverse, i -> ripples[i].cosineRad());
        double sine = HarmonicRegression.intercept(inverse, i -> ripples[i].sineRad());
        return new Ripple(ripples[0].order(), cosine, sine);
    }
}
