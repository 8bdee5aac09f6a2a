package servowright.engine.numeric;

import static java.lang.Math.atan;
import static java.lang.Math.cos;
import static java.lang.Math.exp;
import static java.lang.Math.log;
import static java.lang.Math.pow;
import static java.lang.Math.sin;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** NIST Statistical Reference Datasets, nonlinear regression: certified values read from the publisher's files [seen]. */
class StrdNonlinearTest {
    private static final double ENOUGH_DIGITS = 6;

    /** The model of one set, by observation; x[0] is the first predictor. */
    private interface Formula {
        double at(double[] b, double[] x);
    }

    private static double quadraticPeak(double x, double centre, double width) {
        return exp(-pow((x - centre) / width, 2));
    }

    private static double cubicOverCubic(double[] b, double[] x) {
        double v = x[0];
        return (b[0] + v * (b[1] + v * (b[2] + v * b[3]))) / (1 + v * (b[4] + v * (b[5] + v * b[6])));
    }

    private static double saturation(double[] b, double[] x) {
        return b[0] * (1 - exp(-b[1] * x[0]));
    }

    private static double chwirut(double[] b, double[] x) {
        return exp(-b[0] * x[0]) / (b[1] + b[2] * x[0]);
    }

    private static double twoPeaks(double[] b, double[] x) {
        return b[0] * exp(-b[1] * x[0])
                + b[2] * quadraticPeak(x[0], b[3], b[4])
                + b[5] * quadraticPeak(x[0], b[6], b[7]);
    }

    private static double threeDecays(double[] b, double[] x) {
        return b[0] * exp(-b[1] * x[0]) + b[2] * exp(-b[3] * x[0]) + b[4] * exp(-b[5] * x[0]);
    }

    private static double threeCycles(double[] b, double[] x) {
        double turn = 2 * Math.PI * x[0];
        return b[0]
                + b[1] * cos(turn / 12)
                + b[2] * sin(turn / 12)
                + b[4] * cos(turn / b[3])
                + b[5] * sin(turn / b[3])
                + b[7] * cos(turn / b[6])
                + b[8] * sin(turn / b[6]);
    }

    private static final Map<String, Formula> FORMULAS = formulas();

    private static Map<String, Formula> formulas() {
        Map<String, Formula> all = new LinkedHashMap<>();
        all.put("Bennett5", (b, x) -> b[0] * pow(b[1] + x[0], -1 / b[2]));
        all.put("BoxBOD", StrdNonlinearTest::saturation);
        all.put("Chwirut1", StrdNonlinearTest::chwirut);
        all.put("Chwirut2", StrdNonlinearTest::chwirut);
        all.put("DanWood", (b, x) -> b[0] * pow(x[0], b[1]));
        all.put("ENSO", StrdNonlinearTest::threeCycles);
        all.put("Eckerle4", (b, x) -> b[0] / b[1] * exp(-0.5 * pow((x[0] - b[2]) / b[1], 2)));
        all.put("Gauss1", StrdNonlinearTest::twoPeaks);
        all.put("Gauss2", StrdNonlinearTest::twoPeaks);
        all.put("Gauss3", StrdNonlinearTest::twoPeaks);
        all.put("Hahn1", StrdNonlinearTest::cubicOverCubic);
        all.put("Kirby2", (b, x) -> (b[0] + x[0] * (b[1] + x[0] * b[2])) / (1 + x[0] * (b[3] + x[0] * b[4])));
        all.put("Lanczos1", StrdNonlinearTest::threeDecays);
        all.put("Lanczos2", StrdNonlinearTest::threeDecays);
        all.put("Lanczos3", StrdNonlinearTest::threeDecays);
        all.put("MGH09", (b, x) -> b[0] * x[0] * (x[0] + b[1]) / (x[0] * (x[0] + b[2]) + b[3]));
        all.put("MGH10", (b, x) -> b[0] * exp(b[1] / (x[0] + b[2])));
        all.put("MGH17", (b, x) -> b[0] + b[1] * exp(-x[0] * b[3]) + b[2] * exp(-x[0] * b[4]));
        all.put("Misra1a", StrdNonlinearTest::saturation);
        all.put("Misra1b", (b, x) -> b[0] * (1 - pow(1 + b[1] * x[0] / 2, -2)));
        all.put("Misra1c", (b, x) -> b[0] * (1 - pow(1 + 2 * b[1] * x[0], -0.5)));
        all.put("Misra1d", (b, x) -> b[0] * b[1] * x[0] / (1 + b[1] * x[0]));
        all.put("Nelson", (b, x) -> b[0] - b[1] * x[0] * exp(-b[2] * x[1]));
        all.put("Rat42", (b, x) -> b[0] / (1 + exp(b[1] - b[2] * x[0])));
        all.put("Rat43", (b, x) -> b[0] / pow(1 + exp(b[1] - b[2] * x[0]), 1 / b[3]));
        all.put("Roszman1", (b, x) -> b[0] - b[1] * x[0] - atan(b[2] / (x[0] - b[3])) / Math.PI);
        all.put("Thurber", StrdNonlinearTest::cubicOverCubic);
        return all;
    }

    private static NonlinearFit fit(String name, StrdFile file, double[] start) {
        double[][] data = file.data();
        double[] observed = name.equals("Nelson") ? log(data[0]) : data[0];
        Formula formula = Objects.requireNonNull(FORMULAS.get(name), name);
        NonlinearModel model = b -> IntStream.range(0, observed.length)
                .mapToDouble(i -> formula.at(b, predictors(data, i)))
                .toArray();
        return NonlinearFit.of(model, observed, start);
    }

    private static double[] log(double[] values) {
        return Arrays.stream(values).map(Math::log).toArray();
    }

    private static double[] predictors(double[][] data, int i) {
        return IntStream.range(1, data.length).mapToDouble(j -> data[j][i]).toArray();
    }

    private static double worstDigits(Values found, double[] certified) {
        return IntStream.range(0, certified.length)
                .mapToDouble(j -> StrdFile.digits(found.at(j), certified[j], 11))
                .min()
                .orElseThrow();
    }

    @Test
    void reads_all_27_sets() {
        assertThat(FORMULAS).hasSize(27);
    }

    @TestFactory
    Stream<DynamicTest> agrees_with_the_certified_values_from_the_near_start() {
        return FORMULAS.keySet().stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    StrdFile file = StrdFile.read(name);
                    NonlinearFit fit = fit(name, file, file.starts().get(1));
                    agrees(name, file, fit);
                }));
    }

    @TestFactory
    Stream<DynamicTest> agrees_or_says_that_it_did_not_converge_from_the_far_start() {
        return FORMULAS.keySet().stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    StrdFile file = StrdFile.read(name);
                    NonlinearFit fit = fit(name, file, file.starts().get(0));
                    if (fit.status().converged()) {
                        agrees(name, file, fit);
                    } else {
                        assertThat(fit.covariance().standardDeviations().stream())
                                .allMatch(v -> Double.isNaN(v));
                    }
                }));
    }

    private static void agrees(String name, StrdFile file, NonlinearFit fit) {
        assertThat(fit.status()).isEqualTo(FitStatus.CONVERGED);
        assertThat(worstDigits(fit.parameters(), file.certified()))
                .as("digits of %s", name)
                .isGreaterThan(ENOUGH_DIGITS);
        if (!name.equals("Lanczos1")) { // residuals there are the last digits of the data
            assertThat(worstDigits(fit.covariance().standardDeviations(), file.deviations()))
                    .isGreaterThan(ENOUGH_DIGITS);
            assertThat(StrdFile.digits(fit.residualSumOfSquares(), file.rss(), 11))
                    .isGreaterThan(ENOUGH_DIGITS);
            assertThat(StrdFile.digits(fit.residualSd(), file.sd(), 11)).isGreaterThan(ENOUGH_DIGITS);
        }
    }
}
