package servowright.engine.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.findings.Finding.Area;
import servowright.engine.findings.Finding.Margin;
import servowright.engine.findings.Finding.Sense;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.Axis;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.quantity.Quantity;

/** A figure whose variance is 9 parts of one parameter's source and 1 part of another's (JCGM 100:2008, 5.1.2). */
class NarrowingTest {
    private static final Place NOWHERE = new Place("machine.yaml", 1, "");
    private static final Source SPIN = Source.of("spin");
    private static final Source METER = Source.of("meter");

    private static Known known(double value, Source source, double u) {
        return Known.of(Quantity.number(value), u, source, Origin.MEASURED, "bench");
    }

    private static Finding finding(String id, Known value, double limit) {
        return new Finding(
                id,
                "lift",
                Area.FIT,
                Verdict.TIGHT,
                Phrase.of("asks and gets"),
                Phrase.of(""),
                Phrase.of(""),
                List.of(),
                Optional.of(new Margin(
                        value, Known.exact(Quantity.number(limit), Origin.DECLARED, ""), Sense.AT_LEAST, "")),
                Working.NONE,
                List.of(),
                "none");
    }

    private static IdentifiedMachine lift() {
        Axis axis = new Axis(
                "lift", NOWHERE, Optional.of("winder"), Optional.empty(), Optional.empty(), Figures.none(), Map.of());
        Machine machine = new Machine(
                "m",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of(),
                Map.of(),
                Map.of(),
                Map.of("lift", axis),
                Bus.none());
        IdentifiedMotor winder = new IdentifiedMotor(
                "winder",
                Map.of(
                        MotorParameter.FLUX_LINKAGE, parameter(MotorParameter.FLUX_LINKAGE, known(5, SPIN, 0.1)),
                        MotorParameter.PHASE_RESISTANCE,
                                parameter(MotorParameter.PHASE_RESISTANCE, known(0.1, METER, 0.01))),
                List.of());
        return new IdentifiedMachine(machine, Map.of("winder", winder), Map.of(), List.of());
    }

    private static Parameter parameter(MotorParameter what, Known value) {
        return new Parameter(what, new Outcome.Answer<>(value, Working.NONE, List.of()), List.of());
    }

    @Test
    void ranks_parameters_by_their_share_of_the_variance_and_the_room() {
        Known reach = known(100, SPIN, 3).withPart(METER, 1);
        List<Narrowing> found =
                Narrowing.of(List.of(finding("far-off", reach, 40), finding("speed-reach", reach, 95)), lift());
        assertThat(found)
                .extracting(Narrowing::what)
                .containsExactly(MotorParameter.FLUX_LINKAGE, MotorParameter.PHASE_RESISTANCE);
        assertThat(found.get(0).share()).isCloseTo(0.9, within(1e-12));
        assertThat(found.get(0).finding().id()).isEqualTo("speed-reach");
        // Two standard uncertainties, 2 · √10, are more than the room of 5: the answer is open.
        assertThat(found.get(0).weight()).isCloseTo(0.9, within(1e-12));
        assertThat(Stream.of(0, 1).map(i -> found.get(i).motor())).containsOnly("winder");
    }

    @Test
    void finds_nothing_to_narrow_in_a_figure_without_uncertainty() {
        Known exact = Known.exact(Quantity.number(100), Origin.DECLARED, "");
        assertThat(Narrowing.of(List.of(finding("speed-reach", exact, 100)), lift()))
                .isEmpty();
    }

    /** Two parameters from one instrument: its part belongs to the one that rests on it alone. */
    @Test
    void counts_a_shared_instrument_once() {
        IdentifiedMotor winder = new IdentifiedMotor(
                "winder",
                Map.of(
                        MotorParameter.FLUX_LINKAGE, parameter(MotorParameter.FLUX_LINKAGE, known(5, METER, 0.1)),
                        MotorParameter.ROTOR_INERTIA,
                                parameter(
                                        MotorParameter.ROTOR_INERTIA,
                                        known(1, METER, 0.01).withPart(SPIN, 0.1))),
                List.of());
        IdentifiedMachine machine =
                new IdentifiedMachine(lift().machine(), Map.of("winder", winder), Map.of(), List.of());
        List<Narrowing> found = Narrowing.of(List.of(finding("speed-reach", known(100, METER, 3), 95)), machine);
        assertThat(found).extracting(Narrowing::what).containsExactly(MotorParameter.FLUX_LINKAGE);
        assertThat(found.get(0).share()).isCloseTo(1, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "oscilloscope with probe ± 0.02 gain | closer limits for the {what}: its ± {limit} make {share} of it",
                "clamp ± 0.01 ± 0.002 zero | closer limits for the {what}: its ± {limit} make {share} of it",
                "bench.yaml:54 tests / 7 / added_inertia | closer limits for the {what} in {place}: they make {share} of it",
                "spin hub 1 thermometer | the temperature read more closely in {what}: it makes {share} of it",
                "disagreement of the tests for the flux linkage of hub | find out why its tests disagree: that makes {share} of it",
                "coast-down hub 1 | more or longer readings: {what} makes {share} of it"
            })
    void names_the_weakest_part_of_a_test_that_was_made(String source, String advice) {
        Known best = known(5, Source.of(source), 0.1).withPart(Source.of("another"), 0.01);
        assertThat(NarrowingAdvice.of(MotorParameter.FLUX_LINKAGE, best).template())
                .isEqualTo(advice);
    }

    @Test
    void asks_for_the_test_itself_while_only_a_label_speaks() {
        Known label = Known.of(Quantity.number(5), 0.3, METER, Origin.DATA_SHEET, "machine.yaml:7");
        assertThat(NarrowingAdvice.of(MotorParameter.FLUX_LINKAGE, label))
                .isEqualTo(Phrase.of(MotorParameter.FLUX_LINKAGE.settle()));
    }
}
