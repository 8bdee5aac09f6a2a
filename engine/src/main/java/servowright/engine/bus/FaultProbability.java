package servowright.engine.bus;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * How probable each response time is when faults come at random.
 *
 * <p><b>Formula.</b> R_K is the response time with K faults. With faults Poisson-distributed at rate λ, the frame is through at
 * R_K if K faults fall into [0, R_K] and it was not through before: P(R_K) = p(K, R_K) - Σ_{j < K} P(R_j) p(K - j, R_K - R_j),
 * where p(n, t) = e^{-λt} (λt)^n / n!.
 *
 * <p><b>Valid for</b> faults that hit independently and each cost the longest retransmission. <b>Source.</b> Broster, Burns,
 * Rodríguez-Navas, Probabilistic analysis of CAN with faults, RTSS 2002 (figures seen as published test values; the recurrence
 * is derived here and gives them).
 */
public final class FaultProbability {
    private FaultProbability() {}

    /**
     * Probability of each response time.
     *
     * @param responses  R_0, R_1, ... rising, any unit of time
     * @param faultRate  faults per that unit of time
     */
    public static List<Double> of(List<Double> responses, double faultRate) {
        Require.notNegative("fault rate", faultRate, "");
        List<Double> found = new ArrayList<>();
        for (int k = 0; k < responses.size(); k++) {
            double p = poisson(k, faultRate * responses.get(k));
            for (int j = 0; j < k; j++) {
                p -= found.get(j) * poisson(k - j, faultRate * (responses.get(k) - responses.get(j)));
            }
            found.add(p);
        }
        return List.copyOf(found);
    }

    private static double poisson(int n, double mean) {
        double p = Math.exp(-mean);
        for (int i = 1; i <= n; i++) {
            p *= mean / i;
        }
        return p;
    }
}
