package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * NIST Statistical Reference Datasets, linear regression. Coefficients, standard errors, residual standard deviation
 * and R2 were recomputed from the data in exact rational arithmetic and agree with the certified values [calc].
 */
class StrdLinearTest {
    private record Certified(List<Double> estimates, List<Double> errors, double sd, double rSquared) {}

    private static Map<String, Certified> certified() {
        Map<String, Certified> all = new LinkedHashMap<>();
        StrdFile.resource("nist/linear/certified_recomputed.csv")
                .lines()
                .skip(1)
                .forEach(line -> {
                    String[] cells = line.split(",", -1);
                    double sd = Double.parseDouble(cells[4]);
                    double rSquared = Double.parseDouble(cells[5]);
                    Certified set = all.computeIfAbsent(
                            cells[0], n -> new Certified(new ArrayList<>(), new ArrayList<>(), sd, rSquared));
                    set.estimates().add(Double.parseDouble(cells[2]));
                    set.errors().add(Double.parseDouble(cells[3]));
                });
        return all;
    }

    private static Design design(String set, double[][] table) {
        double[] x = table[1];
        if (set.startsWith("noint")) {
            return Design.lineThroughZero(x);
        }
        if (set.equals("longley")) {
            double[][] columns = table.clone();
            columns[0] = new double[x.length];
            Arrays.fill(columns[0], 1);
            return Design.ofColumns(columns);
        }
        return Design.polynomial(x, degree(set));
    }

    private static int degree(String set) {
        return switch (set) {
            case "norris" -> 1;
            case "pontius" -> 2;
            case "filip" -> 10;
            default -> 5;
        };
    }

    private static double enough(String set) {
        return switch (set) {
            case "filip" -> 6;
            case "longley" -> 8;
            default -> 9;
        };
    }

    @TestFactory
    Stream<DynamicTest> agrees_with_the_reference_values() {
        assertThat(certified()).hasSize(11);
        return certified().entrySet().stream()
                .map(e -> DynamicTest.dynamicTest(e.getKey(), () -> check(e.getKey(), e.getValue())));
    }

    private static void check(String set, Certified reference) {
        double[][] table = StrdFile.table("nist/linear/" + set + ".csv");
        LinearFit fit = LinearFit.of(design(set, table), table[0]);
        assertThat(fit.status()).isEqualTo(FitStatus.CONVERGED);
        for (int j = 0; j < fit.parameters().size(); j++) {
            double estimate =
                    StrdFile.digits(fit.parameter(j), reference.estimates().get(j), 15);
            double error =
                    StrdFile.digits(fit.standardError(j), reference.errors().get(j), 15);
            assertThat(estimate).as("digits of parameter %d", j).isGreaterThan(enough(set));
            assertThat(error).as("digits of standard error %d", j).isGreaterThan(enough(set));
        }
        assertThat(StrdFile.digits(fit.residualSd(), reference.sd(), 15)).isGreaterThan(enough(set));
        boolean aboutZero = set.startsWith("noint");
        assertThat(StrdFile.digits(aboutZero ? fit.rSquaredAboutZero() : fit.rSquared(), reference.rSquared(), 15))
                .isGreaterThan(enough(set));
    }
}
