package servowright.engine.known;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

class KnownTest {
    private static Known measured(String id, double value, double u, double dof) {
        return Known.of(Quantity.number(value), u, Source.of(id, dof), Origin.MEASURED, id);
    }

    /**
     * JCGM 100:2008, H.1 (end-gauge calibration): components 25 nm (18 degrees of freedom), 9.7 nm (25.6), 2.9 nm (50),
     * 16.6 nm (2); combined 32 nm with 16 effective degrees of freedom. Figures seen in a transcription of the example.
     */
    @Test
    void agrees_with_gum_2008_h1_end_gauge() {
        Known length = measured("standard", 50_000_623, 25, 18)
                .plus(measured("comparator", 215, 9.7, 25.6))
                .plus(measured("temperature", 0, 2.9, 50))
                .plus(measured("expansion", 0, 16.6, 2));
        assertThat(length.si()).isEqualTo(50_000_838);
        assertThat(length.standardUncertainty()).isCloseTo(32, within(0.5));
        assertThat(Math.floor(length.degreesOfFreedom())).isEqualTo(16);
    }

    /**
     * JCGM 100:2008, H.2 (resistance and reactance from V, I and phi, all correlated): means, standard uncertainties and
     * correlations of table H.2, results of table H.3, kept to more digits by recomputation from the raw data.
     */
    @Test
    void agrees_with_gum_2008_h2_correlated_inputs() {
        double[] u = {3.2094e-3, 9.4710e-6, 7.5206e-4};
        double[][] r = {{1, -0.3553, 0.8576}, {-0.3553, 1, -0.6451}, {0.8576, -0.6451, 1}};
        double[][] cov = new double[3][3];
        for (int i = 0; i < 3; i++) {
            for (int k = 0; k < 3; k++) {
                cov[i][k] = r[i][k] * u[i] * u[k];
            }
        }
        List<Known> in = Propagation.jointly(
                List.of(Quantity.of(4.9990, "V"), Quantity.of(19.6610, "mA"), Quantity.of(1.04446, "rad")),
                cov,
                "means",
                4,
                Origin.MEASURED,
                "table H.2");
        Known resistance = Propagation.derive(Dimension.RESISTANCE, x -> x[0] / x[1] * Math.cos(x[2]), in);
        Known reactance = Propagation.derive(Dimension.RESISTANCE, x -> x[0] / x[1] * Math.sin(x[2]), in);
        Known impedance = Propagation.derive(Dimension.RESISTANCE, x -> x[0] / x[1], in);
        assertThat(resistance.si()).isCloseTo(127.732, within(2e-3));
        assertThat(resistance.standardUncertainty()).isCloseTo(0.071, within(5e-4));
        assertThat(reactance.si()).isCloseTo(219.847, within(2e-3));
        assertThat(reactance.standardUncertainty()).isCloseTo(0.2956, within(5e-4));
        assertThat(impedance.standardUncertainty()).isCloseTo(0.2363, within(5e-4));
        assertThat(resistance.correlation(reactance)).isCloseTo(-0.588, within(3e-3));
        assertThat(resistance.correlation(impedance)).isCloseTo(-0.485, within(3e-3));
        assertThat(reactance.correlation(impedance)).isCloseTo(0.993, within(1e-3));
        assertThat(impedance.degreesOfFreedom())
                .as("one fit, one residual variance")
                .isCloseTo(4, within(1e-9));
    }

    @Test
    void a_figure_minus_itself_is_exactly_zero() {
        Known x = Known.of(Quantity.of(3, "V"), 0.1, Source.of("meter"), Origin.MEASURED, "");
        Known none = x.minus(x);
        assertThat(none.si()).isZero();
        assertThat(none.standardUncertainty()).isZero();
        assertThat(x.over(x).standardUncertainty()).isCloseTo(0, within(1e-15));
        assertThat(none.degreesOfFreedom()).isInfinite();
        assertThat(none.correlation(x)).isZero();
    }

    @Test
    void two_figures_that_share_an_input_are_correlated() {
        Known gain = measured("gain", 2, 0.02, Double.POSITIVE_INFINITY);
        Known a = gain.times(measured("a", 3, 0.003, 10));
        Known b = gain.times(measured("b", 5, 0.005, 10));
        assertThat(a.correlation(b)).isBetween(0.98, 1.0);
        assertThat(a.over(b).relativeUncertainty()).isCloseTo(0.001 * Math.sqrt(2), within(1e-6));
    }

    @Test
    void remembers_what_it_rests_on() {
        Known assumed = Known.number(0.9, Origin.ASSUMED, "reserve");
        Known label = Known.exact(Quantity.of(24, "V"), Origin.DATA_SHEET, "label");
        Known v = assumed.times(label);
        assertThat(v.origin()).isEqualTo(Origin.DERIVED);
        assertThat(v.restsOn()).contains(Origin.ASSUMED, Origin.DATA_SHEET);
        assertThat(v.as(Origin.MEASURED, "x").restsOn()).contains(Origin.MEASURED, Origin.ASSUMED);
    }

    @Test
    void a_further_source_adds_in_quadrature() {
        Known x = measured("type A", 10, 3, 9).withPart(Source.of("instrument"), 4);
        assertThat(x.standardUncertainty()).isCloseTo(5, within(1e-12));
        assertThat(x.withPart(Source.of("instrument"), 12).standardUncertainty())
                .isCloseTo(13, within(1e-12));
        assertThat(x.times(-2).standardUncertainty()).isCloseTo(10, within(1e-12));
    }

    @Test
    void refuses_an_uncertainty_that_is_no_number() {
        assertThatThrownBy(() -> measured("x", 1, Double.NaN, 5)).hasMessageContaining("standard uncertainty");
        assertThatThrownBy(() -> Source.of("x", Double.NaN)).hasMessageContaining("degrees of freedom");
    }

    @Test
    void a_working_keeps_formula_figures_and_source() {
        Working.Sheet sheet = Working.begin();
        Known p = Known.number(7, Origin.DECLARED, "magnets counted");
        Known lambda =
                Known.of(Quantity.of(2.5, "mWb"), 1e-5, Source.of("spin"), Origin.MEASURED, "recordings/spin.csv");
        Known kt = sheet.line(
                "torque constant",
                "{Kt} = 3/2 · {p} · {λ}",
                "N m/A",
                Dimension.TORQUE_CONSTANT,
                "torque equation of the dq model",
                x -> 1.5 * x[0] * x[1],
                Term.of("p", p),
                Term.of("λ", lambda, "mWb"));
        Working working = sheet.end().then(Working.NONE);
        assertThat(kt.si()).isCloseTo(0.02625, within(1e-12));
        assertThat(kt.relativeUncertainty()).isCloseTo(0.004, within(1e-9));
        assertThat(working.steps()).singleElement().satisfies(s -> {
            assertThat(s.result().symbol()).isEqualTo("Kt");
            assertThat(s.terms()).hasSize(2);
            assertThat(s.source()).contains("dq model");
        });
        assertThat(Working.begin().include(working).end()).isEqualTo(working);
    }

    @Test
    void a_phrase_has_a_place_for_each_figure() {
        Phrase p = Phrase.of("asks {asked} at {who}").with("asked", 3).with("who", "lift");
        assertThat(p.figures()).containsKeys("asked", "who");
        assertThatThrownBy(() -> p.with("gets", 1)).hasMessageContaining("has no place for gets");
    }

    @Test
    void missing_says_what_would_settle_it() {
        Outcome<Integer> missing = Outcome.missing("rotor inertia", "a coast-down");
        Outcome<Integer> answer = Outcome.answer(3, Working.NONE);
        assertThat(missing.found()).isEmpty();
        assertThat(answer.found()).contains(3);
        assertThat(missing.<String>fold(a -> "", m -> m.needs().get(0).settle()))
                .isEqualTo("a coast-down");
        assertThat(new Outcome.Missing<Integer>(List.of(new Outcome.Need("a", "b")))
                        .<String>forAnother()
                        .found())
                .isEmpty();
        assertThatThrownBy(() -> new Outcome.Missing<Integer>(List.of())).hasMessageContaining("at least one");
    }

    @Test
    void a_problem_reads_as_one_line() {
        Problem p = new Problem(
                Problem.Kind.OUT_OF_RANGE,
                new Place("machine.yaml", 41, "axes / tilt / mount / gap"),
                "1.4 m",
                "1.4 m is far outside 0.1 mm to 10 mm",
                "0.1 mm to 10 mm",
                "Did you mean 1.4 mm?");
        assertThat(p.text())
                .isEqualTo("line 41, axes / tilt / mount / gap: 1.4 m is far outside 0.1 mm to 10 mm."
                        + " Did you mean 1.4 mm?");
        assertThat(p.place().text()).isEqualTo("machine.yaml:41");
        assertThat(new Problem(
                                Problem.Kind.MISSING_FILE,
                                new Place("a.csv", 0, ""),
                                "",
                                "there is no such file",
                                "",
                                "")
                        .text())
                .isEqualTo("there is no such file.");
        assertThat(new Place("a.csv", 0, "").text()).isEqualTo("a.csv");
    }
}
