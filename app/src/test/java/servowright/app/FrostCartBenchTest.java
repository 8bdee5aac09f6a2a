package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.app.input.MachineFolder;
import servowright.app.input.csv.ReadResult;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.csv.RecordingReader;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.Identification;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.RecorderParameter;
import servowright.engine.bench.ResponseParameter;
import servowright.engine.bench.SensingParameter;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.bench.ThermistorParameter;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** The recordings of the frost cart against the true values they were made from, which stand in the programs that made them. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FrostCartBenchTest {
    private static final Path FOLDER =
            Path.of(System.getProperty("servowright.root", ".")).resolve("examples/frost-cart");

    private final String maker = Files.readString(FOLDER.resolve("MakeRecordings.java"))
            + Files.readString(FOLDER.resolve("MakeResponses.java"));
    private final IdentifiedMachine cart = identified();

    FrostCartBenchTest() throws IOException {}

    private static IdentifiedMachine identified() {
        MachineFolder.Loaded loaded = (MachineFolder.Loaded) MachineFolder.read(FOLDER);
        Map<String, Recording> recordings = new LinkedHashMap<>();
        for (BenchTest test : loaded.tests()) {
            test.recording().ifPresent(name -> recordings.put(name, recording(name)));
        }
        return Identification.identify(loaded.machine(), loaded.tests(), recordings);
    }

    private static Recording recording(String name) {
        ReadResult result = RecordingReader.read(FOLDER.resolve(name), name, ReadingHints.none());
        assertThat(result).isInstanceOf(ReadResult.Read.class);
        return ((ReadResult.Read) result).recording();
    }

    /** A number of a motor's record in the maker: 0 pole pairs, 1 flux linkage. */
    private double truth(String motor, int part) {
        Matcher found = Pattern.compile(motor + " = new Motor\\(([^)]*)\\)").matcher(maker);
        assertThat(found.find()).as(motor).isTrue();
        return Double.parseDouble(found.group(1).split(",")[part].strip());
    }

    private double truth(String constant) {
        Matcher found = Pattern.compile(constant + " = ([0-9.e-]+);").matcher(maker);
        assertThat(found.find()).as(constant).isTrue();
        return Double.parseDouble(found.group(1));
    }

    private Known best(String motor, MotorParameter what) {
        Known best = motor(motor).best(what).found().orElseThrow();
        assertThat(best.origin()).as(motor + " " + what).isEqualTo(Origin.MEASURED);
        return best;
    }

    private IdentifiedMotor motor(String name) {
        return cart.motor(name).orElseThrow();
    }

    @Test
    void every_test_gives_what_it_was_made_for() {
        assertThat(cart.tests()).hasSize(28);
        cart.tests()
                .forEach(t -> t.values()
                        .forEach((what, value) -> assertThat(value.found())
                                .as(t.test().id() + " " + what.words())
                                .isPresent()));
    }

    @ParameterizedTest
    @CsvSource({"hub, HUB", "winder, WINDER", "flat, FLAT"})
    void holds_the_true_pole_pairs_and_flux_linkage(String motor, String maker) {
        assertThat(best(motor, MotorParameter.POLE_PAIRS).si()).isEqualTo(truth(maker, 0));
        Known flux = best(motor, MotorParameter.FLUX_LINKAGE);
        assertThat(flux.si()).isCloseTo(truth(maker, 1), within(flux.expandedUncertainty()));
        assertThat(flux.relativeUncertainty()).isLessThan(0.02);
    }

    @Test
    void holds_the_true_winding_of_the_hub() {
        // Half of the loop, taken from 21 to 20 degC with the copper constant 234.5 K (recomputed).
        double ohm = truth("HUB_LOOP_OHM") / 2 * (234.5 + 20) / (234.5 + 21);
        Known resistance = best("hub", MotorParameter.PHASE_RESISTANCE);
        assertThat(resistance.si()).isCloseTo(ohm, within(resistance.expandedUncertainty()));
        assertThat(resistance.relativeUncertainty()).isLessThan(0.01);
        Known inductance = best("hub", MotorParameter.PHASE_INDUCTANCE);
        assertThat(inductance.si()).isCloseTo(truth("HUB_LOOP_HENRY") / 2, within(inductance.expandedUncertainty()));
        assertThat(inductance.relativeUncertainty()).isLessThan(0.03);
    }

    @Test
    void holds_the_true_inertia_and_drag_of_the_hub() {
        holds(MotorParameter.ROTOR_INERTIA, truth("HUB_INERTIA"), 0.01);
        holds(MotorParameter.DRY_DRAG, truth("HUB_DRY_DRAG"), 0.01);
        holds(MotorParameter.VISCOUS_DRAG, truth("HUB_VISCOUS_DRAG"), 0.01);
        // Settled at 8 A: 35.84 K on 17.48 W, from which the readings were made.
        holds(MotorParameter.THERMAL_RESISTANCE, 2.05, 0.02);
        holds(MotorParameter.WINDING_TO_HOUSING, truth("HUB_WINDING_TO_HOUSING"), 0.02);
        holds(MotorParameter.HOUSING_TO_AIR, truth("HUB_HOUSING_TO_AIR"), 0.02);
        holds(MotorParameter.WINDING_CAPACITY, truth("HUB_WINDING_CAPACITY"), 0.06);
        holds(MotorParameter.HOUSING_CAPACITY, truth("HUB_HOUSING_CAPACITY"), 0.02);
        // The three waves come nearly to their largest together somewhere on the turn.
        double waves = truth("HUB_COGGING") + truth("HUB_SLOT_TORQUE") + truth("HUB_OFFSET_TORQUE");
        assertThat(best("hub", MotorParameter.COGGING_TORQUE).si()).isBetween(1.85 * waves, 2.02 * waves);
        holds(MotorParameter.D_INDUCTANCE, truth("HUB_LOOP_HENRY") / 2, 0.05);
    }

    private void holds(MotorParameter what, double truth, double relative) {
        Known best = best("hub", what);
        assertThat(best.si()).as(what.words()).isCloseTo(truth, within(best.expandedUncertainty()));
        assertThat(best.relativeUncertainty()).as(what.words()).isLessThan(relative);
    }

    @Test
    void uses_eight_kinds_of_tests() {
        assertThat(cart.tests().stream().map(t -> t.test().kind()).distinct()).hasSizeGreaterThanOrEqualTo(8);
    }

    @Test
    void names_the_six_step_figure_on_the_lift_label() {
        Contradiction found = only("winder", MotorParameter.FLUX_LINKAGE);
        assertThat(found.ratio().si()).isCloseTo(Math.PI / 3, within(0.01));
        assertThat(found.factor()).hasValueSatisfying(f -> assertThat(f).contains("six-step against line peak"));
    }

    @Test
    void finds_the_wrong_pole_count_on_the_pan_label() {
        Contradiction found = only("flat", MotorParameter.POLE_PAIRS);
        assertThat(found.ratio().si()).isCloseTo(11.0 / 12, within(1e-12));
    }

    @Test
    void finds_nothing_wrong_with_the_hub() {
        assertThat(motor("hub").contradictions()).isEmpty();
    }

    @Test
    void holds_the_true_offset_friction_and_error_of_the_left_wheel() {
        IdentifiedAxis wheel = cart.axis("left wheel");
        double polePairs = truth("HUB", 0);
        Known offset = wheel.best(AxisParameter.COMMUTATION_OFFSET).found().orElseThrow();
        double electrical = Angles.wrapped(polePairs * Math.toRadians(truth("WHEEL_OFFSET_DEG")));
        assertThat(offset.si()).isCloseTo(electrical, within(offset.expandedUncertainty()));
        assertThat(offset.expandedUncertainty()).isLessThan(Math.toRadians(2));
        Known lag = wheel.best(AxisParameter.FRICTION_LAG).found().orElseThrow();
        assertThat(lag.si()).isCloseTo(Math.asin(truth("WHEEL_FRICTION")), within(lag.expandedUncertainty()));
        List<Ripple> ripples = wheel.correction().orElseThrow().fitted().error().ripples();
        assertThat(ripples).extracting(Ripple::order).containsExactly(1, 2);
        assertThat(Math.toDegrees(ripples.get(0).amplitudeRad())).isCloseTo(truth("WHEEL_FIRST_DEG"), within(0.005));
        assertThat(Math.toDegrees(ripples.get(1).amplitudeRad())).isCloseTo(truth("WHEEL_SECOND_DEG"), within(0.005));
        assertThat(wheel.saw(AngleEvidence.Turned.class).toList().get(0).turn().faults())
                .isEmpty();
    }

    /** A step of the converter is 9.8 mA and the noise larger: 256 samples hold the zero to a few tenths of a step. */
    @Test
    void holds_the_true_zeros_of_the_current_sensors() {
        TestResult zero = cart.tests().stream()
                .filter(t -> t.test().kind() == TestKind.CURRENT_ZERO)
                .findFirst()
                .orElseThrow();
        for (String phase : List.of("A", "B", "C")) {
            Known offset = zero.outcome(SensingParameter.valueOf("OFFSET_" + phase))
                    .found()
                    .orElseThrow()
                    .value();
            assertThat(offset.si())
                    .as(phase)
                    .isCloseTo(truth("ZERO_" + phase + "_AMP"), within(offset.expandedUncertainty()));
            assertThat(offset.expandedUncertainty()).as(phase).isLessThan(0.003);
        }
    }

    private void tells(String test, Sought what, double truth, double relative) {
        TestResult result = cart.tests().stream()
                .filter(t -> t.test().id().equals(test))
                .findFirst()
                .orElseThrow();
        Known value = result.outcome(what).found().orElseThrow().value();
        assertThat(value.si()).as(test + " " + what.words()).isCloseTo(truth, within(value.expandedUncertainty()));
        assertThat(value.relativeUncertainty()).as(test + " " + what.words()).isLessThan(relative);
    }

    @Test
    void holds_the_true_thermistor_of_the_hub_and_speed_loop_of_the_lift() {
        tells("thermistor check hub 1", ThermistorParameter.RESISTANCE_AT_25, truth("THERMISTOR_OHM"), 0.01);
        tells("thermistor check hub 1", ThermistorParameter.BETA, truth("THERMISTOR_BETA"), 0.01);
        tells("response run winder 1", ResponseParameter.GAIN, truth("LOOP_GAIN"), 0.01);
        tells("response run winder 1", ResponseParameter.TIME_CONSTANT, truth("LOOP_TAU"), 0.01);
        tells("response run winder 1", ResponseParameter.DELAY, truth("LOOP_DELAY"), 0.02);
    }

    /** R J / ((3/2) (p λ)²) and 1 / (p λ) of the true motor; the clock of the oscilloscope as it was set. */
    @Test
    void holds_the_true_response_of_the_pan_and_the_clocks_at_the_lift() {
        double emf = truth("FLAT", 0) * truth("FLAT", 1);
        double tau = truth("FLAT_OHM") * truth("FLAT_INERTIA") / (1.5 * emf * emf);
        tells("sine response flat 1", ResponseParameter.GAIN, 1 / emf, 0.01);
        tells("sine response flat 1", ResponseParameter.TIME_CONSTANT, tau, 0.01);
        tells("sine response flat 1", ResponseParameter.DELAY, truth("FLAT_DELAY"), 0.05);
        tells("shared event winder 2", RecorderParameter.CLOCK_OFFSET, truth("SCOPE_LATER"), 0.001);
    }

    private Contradiction only(String motor, MotorParameter what) {
        assertThat(motor(motor).contradictions()).hasSize(1);
        Contradiction found = motor(motor).contradictions().get(0);
        assertThat(found.parameter()).isEqualTo(what);
        return found;
    }
}
