package servowright.engine.bench;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Quantile;
import servowright.engine.quantity.Quantity;

/**
 * Several results for one figure brought together by weighted least squares. Weights follow from what each result has
 * for itself; what all share, such as the gain of the one instrument, gives no weight and stays in the mean in full.
 *
 * @param value      weighted mean; stays correlated with everything its inputs were
 * @param chiSquare  sum of squares of the departures over their own uncertainties
 * @param consistent whether chance explains the departures in all but 1 % of cases
 */
record Combination(Known value, double chiSquare, boolean consistent) {
    private static final double SURE = 0.99;

    /** Own parts below this share of the value count as this share: figures agree to no more digits than that. */
    private static final double LEAST_OWN = 1e-6;

    private static final String LEAST_SQUARES = "weighted least squares in one unknown";

    /** Combines two or more results. */
    static Combination of(List<Known> results) {
        double[] own = own(results);
        double[] values = results.stream().mapToDouble(Known::si).toArray();
        double[] ones = new double[own.length];
        Arrays.fill(ones, 1);
        LinearFit fit = LinearFit.withKnownSigma(Design.ofColumns(ones), values, own);
        double[] weights =
                Arrays.stream(own).map(u -> fit.covariance().at(0, 0) / (u * u)).toArray();
        // Within the results in spite of rounding: a count that all agree on stays a whole number.
        double least = Arrays.stream(values).min().orElseThrow();
        double most = Arrays.stream(values).max().orElseThrow();
        double middle = Math.min(most, Math.max(least, fit.parameter(0)));
        Known mean = Propagation.linear(results.get(0).dimension(), middle, results, weights);
        double chi = fit.residualSumOfSquares();
        return new Combination(mean, chi, chi <= Quantile.chiSquared(SURE, own.length - 1.0));
    }

    /** The plain mean, written down; a single figure stays what it is. */
    static Known mean(Working.Sheet sheet, List<Known> figures, List<String> names) {
        if (figures.size() == 1) {
            return figures.get(0);
        }
        double[] weights = new double[figures.size()];
        Arrays.fill(weights, 1.0 / weights.length);
        double sum = figures.stream().mapToDouble(Known::si).sum();
        Known mean = Propagation.linear(figures.get(0).dimension(), sum / weights.length, figures, weights)
                .as(Origin.DERIVED, "mean");
        Term[] terms = terms(figures);
        String formula = "{x} = mean of " + symbols(terms);
        return sheet.note("mean of " + String.join(", ", names), formula, "", "plain mean", mean, terms);
    }

    /** Writes the combination down. */
    void note(Working.Sheet sheet, List<Known> results, String unit) {
        Term[] terms = terms(results);
        sheet.note(
                "all results together", "{x} = weighted mean of " + symbols(terms), unit, LEAST_SQUARES, value, terms);
        sheet.note(
                "how well they agree",
                "{χ²} = Σ (departure / own uncertainty)², expected about " + (results.size() - 1),
                "",
                LEAST_SQUARES,
                Known.exact(Quantity.number(chiSquare), Origin.DERIVED, "agreement"));
    }

    private static Term[] terms(List<Known> results) {
        return IntStream.range(0, results.size())
                .mapToObj(i -> Term.of("x" + (i + 1), results.get(i)))
                .toArray(Term[]::new);
    }

    private static String symbols(Term[] terms) {
        return String.join(
                ", ", Arrays.stream(terms).map(t -> "{" + t.symbol() + "}").toList());
    }

    /** Standard uncertainty of each result without the sources that all of them share. */
    private static double[] own(List<Known> results) {
        Set<Source> shared = new HashSet<>(results.get(0).parts().keySet());
        results.forEach(r -> shared.retainAll(r.parts().keySet()));
        return results.stream()
                .mapToDouble(r -> {
                    double sum = 0;
                    for (var part : r.parts().entrySet()) {
                        sum += shared.contains(part.getKey()) ? 0 : part.getValue() * part.getValue();
                    }
                    return Math.max(Math.sqrt(sum), LEAST_OWN * Math.abs(r.si()));
                })
                .toArray();
    }
}
