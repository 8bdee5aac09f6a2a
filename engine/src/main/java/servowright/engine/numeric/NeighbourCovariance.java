package servowright.engine.numeric;

import java.util.Optional;

/**
 * Covariance of a linear fit whose residuals depend on their next neighbours, alike everywhere.
 *
 * <p><b>Formula.</b> \\( C = G^{-1} \\left( \\sum_{|l| \\le L} \\gamma_l \\sum_k x_k x_{k+l}^T \\right) G^{-1} \\) with \\( G = X^T X \\), x the rows of the
 * design and \\( \\gamma_l \\) the mean product of residuals l positions apart. Rows that are missing in between count as gaps. It lets noise cancel that
 * returns with the other sign in the next observation, as in means of derivatives over stretches that overlap, where leaving out stretches sees too much. <b>Valid
 * for</b> many more rows than lags and residuals of one size throughout. <b>Source.</b> Covariance of least squares under a stationary error; W. K. Newey, K. D. West,
 * Econometrica 55 (1987), without their weights (recalled).
 */
public final class NeighbourCovariance {
    private NeighbourCovariance() {}

    /**
     * The covariance; empty where the products give no positive variance.
     *
     * @param positions rising, one per row: neighbours are 1 apart
     * @param lags      L
     */
    public static Optional<Covariance> of(Design design, LinearFit fit, int[] positions, int lags) {
        int n = positions.length;
        int p = design.parameters();
        Check.sameLength("positions", design.observations(), n);
        double variance = fit.residualSumOfSquares() / (n - p);
        if (!fit.status().converged() || !(variance > 0)) {
            return Optional.empty();
        }
        double[][] middle = new double[p][p];
        add(middle, design, positions, 0, variance);
        for (int lag = 1; lag <= lags; lag++) {
            add(middle, design, positions, lag, product(fit.residuals(), positions, lag));
        }
        double[][] inverse = fit.covariance().scaledBy(1 / variance).toRows();
        Covariance found = Covariance.of(middle).through(inverse);
        for (int j = 0; j < p; j++) {
            if (!(found.at(j, j) > 0)) {
                return Optional.empty();
            }
        }
        return Optional.of(found);
    }

    /** Correlation of residuals that are neighbours. */
    public static double correlation(LinearFit fit, int... positions) {
        return product(fit.residuals(), positions, 1) / (fit.residualSumOfSquares() / positions.length);
    }

    /** Mean product of residuals so many positions apart. */
    private static double product(Values residuals, int[] positions, int lag) {
        double sum = 0;
        int count = 0;
        int other = 0;
        for (int k = 0; k < positions.length; k++) {
            while (positions[k] - positions[other] > lag) {
                other++;
            }
            if (positions[k] - positions[other] == lag) {
                sum += residuals.at(k) * residuals.at(other);
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }

    private static void add(double[][] middle, Design design, int[] positions, int lag, double gamma) {
        int other = 0;
        for (int k = 0; k < positions.length; k++) {
            while (positions[k] - positions[other] > lag) {
                other++;
            }
            if (positions[k] - positions[other] == lag) {
                for (int i = 0; i < middle.length; i++) {
                    for (int j = 0; j < middle.length; j++) {
                        double one = design.column(i)[k] * design.column(j)[other];
                        middle[i][j] += gamma * one;
                        middle[j][i] += lag == 0 ? 0 : gamma * one;
                    }
                }
            }
        }
    }
}
