package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Quantile;
import servowright.engine.numeric.Statistics;

/**
 * A back-EMF record reduced piece by piece. A speed that changes on the way, as that of a hand drill does, moves
 * amplitude and frequency alike: their quotient stays, while a single fit over the whole record reads too low.
 *
 * @param pieces in the order of time
 */
record SpinPieces(List<Piece> pieces) {
    private static final double PERIODS_EACH = 2.2;
    private static final int MOST = 12;
    private static final double SURE = 0.99;

    SpinPieces {
        pieces = List.copyOf(pieces);
    }

    /**
     * One stretch of the record.
     *
     * @param voltPerHertz      fundamental over frequency
     * @param voltPerHertzError standard error of the quotient from the fit of this piece
     * @param hertz             frequency
     * @param hertzError        standard error
     * @param middleS           time of its middle
     * @param spanS             how long it is
     * @param turns             phase of the fundamental in its middle, in periods
     * @param turnsError        standard error
     */
    record Piece(
            double voltPerHertz,
            double voltPerHertzError,
            double hertz,
            double hertzError,
            double middleS,
            double spanS,
            double turns,
            double turnsError) {
        private static Piece of(Trace part, HarmonicFit fit) {
            Harmonic one = fit.harmonic(1);
            double hertz = fit.frequency();
            double a = one.amplitude();
            double relative = Math.hypot(one.amplitudeStandardError() / a, fit.frequencyStandardError() / hertz);
            double first = part.seconds()[0];
            double middle = first + part.spanS() / 2;
            double sinceZero = part.even() ? part.spanS() / 2 : middle;
            double turns = one.phase() / (2 * Math.PI) + hertz * sinceZero;
            // The covariance is that of the phase at the first sample; in the middle the frequency has no share in it.
            double sideways = one.amplitudeStandardError() / a / (2 * Math.PI);
            return new Piece(
                    a / hertz,
                    relative * a / hertz,
                    hertz,
                    fit.frequencyStandardError(),
                    middle,
                    part.spanS(),
                    turns,
                    sideways);
        }
    }

    static SpinPieces of(Trace trace, HarmonicFit whole, HarmonicTerms terms) {
        double periods = whole.frequency() * trace.spanS();
        int count = (int) Math.min(MOST, periods / PERIODS_EACH);
        List<Piece> pieces = new ArrayList<>();
        HarmonicTerms plain = terms.withoutDrift();
        for (int k = 0; k < count; k++) {
            int from = (int) ((long) k * trace.count() / count);
            int to = (int) ((long) (k + 1) * trace.count() / count);
            Trace part = trace.part(from, to);
            HarmonicFit fit = part.fit(plain.startingAt(whole.frequency()));
            if (fit.status().converged()) {
                pieces.add(Piece.of(part, fit));
            }
        }
        return new SpinPieces(pieces);
    }

    int count() {
        return pieces.size();
    }

    /** Whether the speed changed by more than the fits of the pieces explain. */
    boolean speedChanged() {
        return count() >= 3 && misfit(each(Piece::hertz), each(Piece::hertzError)) > 1;
    }

    /** Mean of the quotients. */
    double meanVoltPerHertz() {
        return Statistics.mean(each(Piece::voltPerHertz));
    }

    /** Standard error of the mean quotient from the scatter of the pieces. */
    double meanVoltPerHertzError() {
        return Statistics.standardError(each(Piece::voltPerHertz));
    }

    /**
     * Periods counted up to the middle of each piece, as a parabola over time from the middle of the record. Its slope is
     * the frequency there, which is the mean when the speed changes evenly. Phases count to small parts of a period and
     * are far closer than the frequencies of short pieces; those only say how many whole periods lie between two middles.
     */
    private LinearFit periodsOverTime() {
        double[] turns = new double[count()];
        for (int k = 1; k < count(); k++) {
            Piece before = pieces.get(k - 1);
            Piece after = pieces.get(k);
            double about = (before.hertz() + after.hertz()) / 2 * (after.middleS() - before.middleS());
            turns[k] = turns[k - 1] + about + Math.IEEEremainder(after.turns() - before.turns() - about, 1);
        }
        double middle = Statistics.mean(each(Piece::middleS));
        double[] seconds =
                Arrays.stream(each(Piece::middleS)).map(t -> t - middle).toArray();
        return LinearFit.withKnownSigma(Design.polynomial(seconds, 2), turns, each(Piece::turnsError));
    }

    /** Mean frequency; needs three pieces. */
    double meanHertz() {
        return periodsOverTime().parameter(1);
    }

    /** Standard error of the mean frequency, widened when the phases stray from the parabola by more than their own. */
    double meanHertzError() {
        LinearFit fit = periodsOverTime();
        int freedom = fit.degreesOfFreedom();
        double strays = freedom > 0 ? Math.max(1, fit.residualSumOfSquares() / freedom) : 1;
        return fit.standardError(1) * Math.sqrt(strays);
    }

    double leastHertz() {
        return Statistics.quantile(each(Piece::hertz), 0);
    }

    double mostHertz() {
        return Statistics.quantile(each(Piece::hertz), 1);
    }

    /**
     * Factor on the statistical uncertainty of the whole for pieces that scatter more than their own fits explain; 1 when
     * they do not.
     */
    double scatterFactor() {
        if (count() < 2) {
            return 1;
        }
        double misfit = misfit(each(Piece::voltPerHertz), each(Piece::voltPerHertzError));
        return misfit > 1 ? Math.sqrt(misfit * Quantile.chiSquared(SURE, count() - 1.0) / (count() - 1)) : 1;
    }

    /** Sum of squares about the weighted mean, in parts of what chance gives in all but 1 % of cases. */
    private static double misfit(double[] values, double[] errors) {
        double[] ones = new double[values.length];
        Arrays.fill(ones, 1);
        LinearFit mean = LinearFit.withKnownSigma(Design.ofColumns(ones), values, errors);
        return mean.residualSumOfSquares() / Quantile.chiSquared(SURE, values.length - 1.0);
    }

    private double[] each(ToDoubleFunction<Piece> figure) {
        return pieces.stream().mapToDouble(figure).toArray();
    }
}
