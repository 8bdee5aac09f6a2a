package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Quantile;
import servowright.engine.numeric.Statistics;

/**
 * A back-EMF record reduced piece by piece. A speed that changes on the way, as that of a hand drill does, moves
 * amplitude and frequency alike: their quotient stays, while a single fit over the whole record reads too low.
 *
 * @param voltPerHertz fundamental over frequency of each piece
 * @param hertz        frequency of each piece
 * @param voltPerHertzError standard error of each quotient from its own fit
 * @param hertzError   standard error of each frequency
 */
record SpinPieces(
        List<Double> voltPerHertz, List<Double> hertz, List<Double> voltPerHertzError, List<Double> hertzError) {
    private static final double PERIODS_EACH = 2.2;
    private static final int MOST = 12;
    private static final double SURE = 0.99;

    SpinPieces {
        voltPerHertz = List.copyOf(voltPerHertz);
        hertz = List.copyOf(hertz);
        voltPerHertzError = List.copyOf(voltPerHertzError);
        hertzError = List.copyOf(hertzError);
    }

    static SpinPieces of(Trace trace, HarmonicFit whole, HarmonicTerms terms) {
        double periods = whole.frequency() * trace.spanS();
        int pieces = (int) Math.min(MOST, periods / PERIODS_EACH);
        List<Double> quotients = new ArrayList<>();
        List<Double> hertz = new ArrayList<>();
        List<Double> quotientErrors = new ArrayList<>();
        List<Double> hertzErrors = new ArrayList<>();
        HarmonicTerms plain = new HarmonicTerms(terms.orders(), false, terms.startFrequency(), false, terms.step());
        for (int k = 0; k < pieces; k++) {
            int from = (int) ((long) k * trace.count() / pieces);
            int to = (int) ((long) (k + 1) * trace.count() / pieces);
            HarmonicFit fit = trace.part(from, to).fit(plain.startingAt(whole.frequency()));
            if (fit.status().converged()) {
                double a = fit.harmonic(1).amplitude();
                double relative = Math.hypot(
                        fit.harmonic(1).amplitudeStandardError() / a, fit.frequencyStandardError() / fit.frequency());
                quotients.add(a / fit.frequency());
                quotientErrors.add(relative * a / fit.frequency());
                hertz.add(fit.frequency());
                hertzErrors.add(fit.frequencyStandardError());
            }
        }
        return new SpinPieces(quotients, hertz, quotientErrors, hertzErrors);
    }

    int count() {
        return hertz.size();
    }

    /** Whether the speed changed by more than the fits of the pieces explain. */
    boolean speedChanged() {
        return count() >= 3 && misfit(hertz, hertzError) > 1;
    }

    /** Mean of the quotients. */
    double meanVoltPerHertz() {
        return Statistics.mean(array(voltPerHertz));
    }

    /** Standard error of the mean quotient from the scatter of the pieces. */
    double meanVoltPerHertzError() {
        return Statistics.standardError(array(voltPerHertz));
    }

    double leastHertz() {
        return Statistics.quantile(array(hertz), 0);
    }

    double mostHertz() {
        return Statistics.quantile(array(hertz), 1);
    }

    /**
     * Factor on the statistical uncertainty of the whole for pieces that scatter more than their own fits explain; 1 when
     * they do not.
     */
    double scatterFactor() {
        if (count() < 2) {
            return 1;
        }
        double misfit = misfit(voltPerHertz, voltPerHertzError);
        return misfit > 1 ? Math.sqrt(misfit * Quantile.chiSquared(SURE, count() - 1.0) / (count() - 1)) : 1;
    }

    /** Sum of squares about the weighted mean, in parts of what chance gives in all but 1 % of cases. */
    private static double misfit(List<Double> values, List<Double> errors) {
        double[] ones = new double[values.size()];
        Arrays.fill(ones, 1);
        LinearFit mean = LinearFit.withKnownSigma(Design.ofColumns(ones), array(values), array(errors));
        return mean.residualSumOfSquares() / Quantile.chiSquared(SURE, values.size() - 1.0);
    }

    private static double[] array(List<Double> list) {
        return list.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
