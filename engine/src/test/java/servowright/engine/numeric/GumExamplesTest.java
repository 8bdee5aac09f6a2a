package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * The examples of JCGM 100:2008, annex H. Inputs and printed results seen in transcriptions; figures with more digits
 * than printed are recomputed from the inputs in full precision.
 */
class GumExamplesTest {
    /** H.1: end gauge, lengths in nm: standard, mean difference, two comparator effects, then heat effects. */
    private static double endGauge(double[] x) {
        double standard = x[0];
        double temperature = x[4] + x[5];
        return standard + x[1] + x[2] + x[3] - standard * (x[6] * temperature + x[7] * x[8]);
    }

    private static final double[] END_GAUGE = {50_000_623, 215, 0, 0, -0.1, 0, 0, 11.5e-6, 0};

    /** Half-widths 0.5 degC as arcsine, 1e-6 and 2e-6 per degC and 0.05 degC as rectangle. */
    private static final double[] END_GAUGE_U = {
        25, 5.8, 3.9, 6.7, 0.2, 0.5 / Math.sqrt(2), 1e-6 / Math.sqrt(3), 2e-6 / Math.sqrt(3), 0.05 / Math.sqrt(3)
    };

    @Test
    void agrees_with_gum_2008_h1_end_gauge() {
        double[] gradient = Derivative.gradient(GumExamplesTest::endGauge, END_GAUGE, END_GAUGE_U);
        double u = Math.sqrt(Covariance.independent(END_GAUGE_U).varianceOf(gradient));
        assertThat(endGauge(END_GAUGE)).isCloseTo(50_000_838, within(1e-6));
        assertThat(gradient[6] * END_GAUGE_U[6]).as("nm").isCloseTo(2.88679, within(1e-4));
        assertThat(Math.abs(gradient[8] * END_GAUGE_U[8])).as("nm").isCloseTo(16.59903, within(1e-4));
        assertThat(u).as("32 nm, recomputed 31.6639").isCloseTo(31.6639, within(1e-3));
        double freedom = Math.pow(u, 4)
                / (Math.pow(25, 4) / 18
                        + Math.pow(5.8, 4) / 24
                        + Math.pow(3.9, 4) / 5
                        + Math.pow(6.7, 4) / 8
                        + Math.pow(16.59903, 4) / 2);
        assertThat(freedom).as("16, recomputed").isBetween(16.5, 17.0);
        assertThat(Quantile.coverageFactor(0.99, 16)).isCloseTo(2.9208, within(1e-4));
        assertThat(u * Quantile.coverageFactor(0.99, 16))
                .as("93 nm, recomputed 92.48")
                .isCloseTo(92.48, within(0.01));
    }

    private static final double[][] H2 = StrdFile.table("gum_h2.csv");

    private static double resistance(double[] x) {
        return x[0] / x[1] * Math.cos(x[2]);
    }

    private static double reactance(double[] x) {
        return x[0] / x[1] * Math.sin(x[2]);
    }

    private static double impedance(double[] x) {
        return x[0] / x[1];
    }

    private static final List<ToDoubleFunction<double[]>> H2_RESULTS =
            List.of(GumExamplesTest::resistance, GumExamplesTest::reactance, GumExamplesTest::impedance);

    private static final double[] H2_MEANS =
            Arrays.stream(H2).mapToDouble(Statistics::mean).toArray();

    private static Covariance ofMeans() {
        return Statistics.covariance(H2).scaledBy(1.0 / H2[0].length);
    }

    @Test
    void agrees_with_gum_2008_h2_approach_1() {
        Covariance means = ofMeans();
        assertThat(H2_MEANS[0]).isCloseTo(4.9990, within(1e-10));
        assertThat(H2_MEANS[1]).isCloseTo(19.6610e-3, within(1e-10));
        assertThat(H2_MEANS[2]).isCloseTo(1.04446, within(1e-10));
        assertThat(means.standardDeviation(0)).isCloseTo(3.2094e-3, within(1e-7));
        assertThat(means.standardDeviation(1)).isCloseTo(9.4710e-6, within(1e-10));
        assertThat(means.standardDeviation(2)).isCloseTo(7.5206e-4, within(1e-8));
        assertThat(means.correlation(0, 1)).isCloseTo(-0.3553, within(1e-4));
        assertThat(means.correlation(0, 2)).isCloseTo(0.8576, within(1e-4));
        assertThat(means.correlation(1, 2)).isCloseTo(-0.6451, within(1e-4));
        double[][] gradients =
                H2_RESULTS.stream().map(f -> Derivative.gradient(f, H2_MEANS)).toArray(double[][]::new);
        Covariance results = means.through(gradients);
        assertThat(resistance(H2_MEANS)).isCloseTo(127.73217, within(1e-5));
        assertThat(reactance(H2_MEANS)).isCloseTo(219.84651, within(1e-5));
        assertThat(impedance(H2_MEANS)).isCloseTo(254.25970, within(1e-5));
        assertThat(results.standardDeviation(0)).isCloseTo(0.07107, within(1e-5));
        assertThat(results.standardDeviation(1)).isCloseTo(0.29558, within(1e-5));
        assertThat(results.standardDeviation(2)).isCloseTo(0.23634, within(1e-5));
        assertThat(results.correlation(0, 1)).isCloseTo(-0.58843, within(1e-5));
        assertThat(results.correlation(0, 2)).isCloseTo(-0.48526, within(1e-5));
        assertThat(results.correlation(1, 2)).isCloseTo(0.99251, within(1e-5));
    }

    @Test
    void agrees_with_gum_2008_h2_approach_2() {
        double[][] results = H2_RESULTS.stream()
                .map(f -> {
                    double[] each = new double[H2[0].length];
                    Arrays.setAll(each, i -> f.applyAsDouble(new double[] {H2[0][i], H2[1][i], H2[2][i]}));
                    return each;
                })
                .toArray(double[][]::new);
        assertThat(Statistics.mean(results[0])).isCloseTo(127.73163, within(1e-5));
        assertThat(Statistics.mean(results[1])).isCloseTo(219.84689, within(1e-5));
        assertThat(Statistics.mean(results[2])).isCloseTo(254.26005, within(1e-5));
        assertThat(Statistics.standardError(results[0])).isCloseTo(0.07127, within(1e-5));
        assertThat(Statistics.standardError(results[1])).isCloseTo(0.29549, within(1e-5));
        assertThat(Statistics.standardError(results[2])).isCloseTo(0.23625, within(1e-5));
    }

    @Test
    void known_figures_give_the_same_h2() {
        List<Known> in = Propagation.jointly(
                List.of(Quantity.of(H2_MEANS[0], "V"), Quantity.of(H2_MEANS[1], "A"), Quantity.of(H2_MEANS[2], "rad")),
                ofMeans().toRows(),
                "readings",
                4,
                Origin.MEASURED,
                "table H.2");
        Known resistance = Propagation.derive(Dimension.RESISTANCE, GumExamplesTest::resistance, in);
        Known reactance = Propagation.derive(Dimension.RESISTANCE, GumExamplesTest::reactance, in);
        assertThat(resistance.standardUncertainty()).isCloseTo(0.07107, within(1e-5));
        assertThat(reactance.standardUncertainty()).isCloseTo(0.29558, within(1e-5));
        assertThat(resistance.correlation(reactance)).isCloseTo(-0.58843, within(1e-5));
    }

    private static LinearFit thermometer() {
        double[][] table = StrdFile.table("gum_h3.csv");
        double[] above20 = Arrays.stream(table[0]).map(t -> t - 20).toArray();
        return LinearFit.of(Design.line(above20), table[1]);
    }

    @Test
    void agrees_with_gum_2008_h3_thermometer_line() {
        LinearFit fit = thermometer();
        assertThat(fit.parameter(0)).isCloseTo(-0.17120379, within(1e-8));
        assertThat(fit.standardError(0)).isCloseTo(0.00287760, within(1e-8));
        assertThat(fit.parameter(1)).isCloseTo(0.00218269774, within(1e-11));
        assertThat(fit.standardError(1)).isCloseTo(0.00066793877, within(1e-11));
        assertThat(fit.covariance().correlation(0, 1)).isCloseTo(-0.93043, within(1e-5));
        assertThat(fit.residualSd()).isCloseTo(0.00349756, within(1e-8));
        assertThat(fit.residualSumOfSquares()).isCloseTo(1.10096583e-4, within(1e-12));
        assertThat(fit.valueAt(1, 10)).isCloseTo(-0.1493768, within(1e-7));
        assertThat(fit.standardErrorAt(1, 10)).isCloseTo(0.0041386, within(1e-7));
    }

    @Test
    void known_figures_give_the_same_h3_because_they_keep_the_covariance() {
        LinearFit fit = thermometer();
        List<Known> line = Propagation.jointly(
                List.of(Quantity.number(fit.parameter(0)), Quantity.number(fit.parameter(1))),
                fit.covariance().toRows(),
                "thermometer",
                fit.effectiveDegreesOfFreedom(),
                Origin.MEASURED,
                "table H.6");
        Known at30 = line.get(0).plus(line.get(1).times(10));
        assertThat(at30.standardUncertainty()).isCloseTo(0.0041386, within(1e-7));
        assertThat(at30.degreesOfFreedom()).isCloseTo(9, within(1e-9));
    }

    @Test
    void known_figures_give_the_same_h1() {
        double[] freedom = {18, 24, 5, 8};
        Known[] inputs = new Known[END_GAUGE.length];
        Arrays.setAll(inputs, i -> {
            double nu = i < freedom.length ? freedom[i] : i == 8 ? 2 : Double.POSITIVE_INFINITY;
            return Known.of(
                    Quantity.number(END_GAUGE[i]),
                    END_GAUGE_U[i],
                    Source.of("input " + i, nu),
                    Origin.MEASURED,
                    "table H.1");
        });
        Known length = Propagation.derive(Dimension.NUMBER, GumExamplesTest::endGauge, List.of(inputs));
        assertThat(length.standardUncertainty()).isCloseTo(31.6639, within(1e-3));
        assertThat(length.degreesOfFreedom()).as("recomputed 16.75, printed 16").isBetween(16.5, 17.0);
    }
}
