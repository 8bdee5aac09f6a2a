package servowright.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import servowright.app.cli.ExitCode;
import servowright.app.cli.MachineSource;
import servowright.app.cli.Program;
import servowright.app.cli.Screen;
import servowright.app.dossier.Dossier;
import servowright.app.view.ExpectationView;
import servowright.app.view.NarrowView;
import servowright.app.view.PlanView.StepView;
import servowright.app.view.View;
import servowright.engine.procedure.Step.State;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The plan of the demo in whole, from its files to the screen. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class FrostCartPlanTest {
    private static final Path ROOT = Path.of(System.getProperty("servowright.root", "."));
    private static final Path FOLDER = ROOT.resolve("examples/frost-cart");

    private final MachineReader reader = new MachineReader("0.1.0");
    private final View view = view();

    private View view() {
        var read = (MachineSource.Read.Assessed) reader.read(FOLDER);
        return View.present(read.assessment(), read.notes());
    }

    private record Said(ExitCode code, String out, String err) {}

    private Said said(int width, String... words) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Screen screen = new Screen(
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8),
                width,
                false,
                false);
        ExitCode code = Program.of(
                        reader,
                        Dossier::html,
                        (folder, port) -> {
                            throw new IllegalStateException("no page was asked for");
                        },
                        "0.1.0")
                .run(screen, words);
        return new Said(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }

    private List<StepView> steps() {
        return view.plan().stream().flatMap(p -> p.steps().stream()).toList();
    }

    /** A as expected, D outside, W worth doing, S can wait; by hand from bench.yaml and machine.yaml. */
    @Test
    void stands_as_the_files_say() {
        String plan = view.plan().stream()
                .map(p -> p.name() + ": "
                        + p.steps().stream().map(FrostCartPlanTest::shown).collect(Collectors.joining(", ")))
                .collect(Collectors.joining("\n"));
        String rest = ", reseating S, free run S, reference run S, offset at speeds S";
        String motor =
                "resistance, inductance step, thermistor check, spin, short circuit, current zero, no-load run, coast-down,"
                        + " acceleration, axis log, response run, sine response, current sensing, hold map, torque stairs, load curve,"
                        + " shared event, heating";
        assertThat(plan)
                .isEqualTo(String.join(
                        "\n",
                        "hub: " + stand(motor, "AAAAAAAAASSSSAAS-A"),
                        "winder: " + stand(motor, "AW-ASWWWSSASSSWSAW"),
                        "flat: " + stand(motor, "WW-ASWWWSSSASSSS-W"),
                        "slim: " + stand(motor, "WW-WSWWWSSSSSSSS-W"),
                        "left wheel: hand turn A, shim series S, alignment S, slow drag D" + rest,
                        "right wheel: hand turn W, shim series S, alignment W, slow drag W" + rest,
                        "lift: hand turn W, alignment W, reference run S, offset at speeds S",
                        "pan: hand turn W, shim series W, alignment W, slow drag W" + rest,
                        "tilt: hand turn W, offset at speeds S"));
    }

    /** Each step with its letter; a dash where there is none. */
    private static String stand(String steps, String letters) {
        String[] each = steps.split(", ");
        return IntStream.range(0, each.length)
                .filter(i -> letters.charAt(i) != '-')
                .mapToObj(i -> each[i] + " " + letters.charAt(i))
                .collect(Collectors.joining(", "));
    }

    private static String shown(StepView step) {
        return step.kind() + " " + step.state().name().charAt(0);
    }

    @Test
    void expects_of_the_tilt_what_its_label_says() {
        // 120 rpm/V line peak within a tenth: 500 rpm give 4.17 V; 3.4 ohm between two terminals.
        ExpectationView spin = reading("slim", "spin");
        assertThat(spin.low()).isEqualTo("3.66");
        assertThat(spin.high()).isEqualTo("4.67");
        assertThat(spin.unit()).isEqualTo("V");
        ExpectationView ohm = reading("slim", "resistance");
        assertThat(ohm.window()).isEqualTo("3.00 to 3.80 ohm");
        assertThat(ohm.from()).startsWith("label, machine.yaml:");
    }

    private ExpectationView reading(String part, String kind) {
        return steps().stream()
                .filter(s -> s.subject().equals(part) && s.kind().equals(kind))
                .findFirst()
                .orElseThrow()
                .expectations()
                .get(0);
    }

    @Test
    void finds_every_reading_of_the_motors_inside() {
        List<ExpectationView> read = steps().stream()
                .flatMap(s -> s.expectations().stream())
                .filter(e -> e.inside().isPresent())
                .toList();
        assertThat(read).hasSizeGreaterThan(20);
        assertThat(read.stream().filter(ExpectationView::outside).map(ExpectationView::test))
                .containsOnly("slow drag left wheel 1");
    }

    @Test
    void puts_first_what_the_tilt_waits_for() {
        assertThat(steps().stream().filter(s -> s.rank() > 0).map(s -> s.rank() + " " + s.kind() + " " + s.subject()))
                .containsExactlyInAnyOrder("1 heating slim", "2 spin slim");
    }

    @Test
    void fits_the_screen_and_answers_fine() {
        Said plan = said(80, "plan", FOLDER.toString());
        assertThat(plan.code()).isEqualTo(ExitCode.FINE);
        assertThat(plan.err()).isEmpty();
        assertThat(plan.out().lines()).allSatisfy(l -> assertThat(l.length()).isLessThanOrEqualTo(80));
        assertThat(plan.out().lines().count()).isLessThan(100);
        assertThat(plan.out().replaceAll("\\s+", " "))
                .contains("Frost cart · bench plan · 96 steps: 20 made (1 outside what was expected), 29 worth doing")
                .contains("66 heating of slim: tilt/torque-reserve waits for it")
                .contains("Local codes and licensed practice decide.");
    }

    @Test
    void shows_one_axis_with_its_motor() {
        String tilt =
                said(80, "plan", FOLDER.toString(), "--axis", "tilt").out().replaceAll("\\s+", " ");
        assertThat(tilt)
                .contains("53 spin of slim · worth doing, narrows most (2)")
                .contains("caution A turning shaft takes hold of sleeves, gloves and hair: guard it.")
                .contains("caution The load falls when its drive lets go: take it off or support it.")
                .contains("states of the three switches in one turn 42")
                .doesNotContain("of hub");
        Said wrong = said(80, "plan", FOLDER.toString(), "--axis", "titl");
        assertThat(wrong.code()).isEqualTo(ExitCode.REFUSED);
        assertThat(wrong.err()).contains("Nearest: tilt.");
    }

    @Test
    void describes_every_key_of_its_json() throws Exception {
        Said json = said(80, "plan", FOLDER.toString(), "--json");
        JsonNode plan = JsonMapper.builder().build().readTree(json.out());
        assertThat(plan.get("kind").stringValue()).isEqualTo("plan");
        assertThat(plan.get("parts").size()).isEqualTo(9);
        String described = Files.readString(ROOT.resolve("docs/json.md"));
        plan.findValues("steps")
                .get(0)
                .get(0)
                .propertyNames()
                .forEach(k -> assertThat(described).contains("`" + k + "`"));
        plan.findValues("expectations")
                .forEach(all -> all.forEach(one ->
                        one.propertyNames().forEach(k -> assertThat(described).contains("`" + k + "`"))));
    }

    @Test
    void prints_a_sheet_to_fill_in() {
        String html = Dossier.html(view);
        assertThat(html).contains("id=\"plan\"").contains("id=\"narrowing\"").contains("class=\"boxes\"");
        long unread = view.plan().stream()
                .flatMap(p -> p.steps(State.WORTH, State.REFUSED, State.DIFFERS).stream())
                .mapToLong(s -> s.expectations().size())
                .sum();
        assertThat(html.split("class=\"boxes\"", -1).length - 1).isEqualTo((int) unread);
    }

    @Test
    void the_bench_fits_55_lines_and_asks_for_no_spin_again() {
        String bench = said(80, "bench", FOLDER.toString()).out();
        assertThat(bench.lines().count()).isLessThanOrEqualTo(55);
        assertThat(bench)
                .contains("thermistor check    thermistor at 25 °C 10.1")
                .contains("response run        gain 0.99")
                .contains("sine response       gain 144.")
                .contains("shared event        offset 412.");
        assertThat(view.narrowing().stream()
                        .filter(n -> !n.motor().equals("slim"))
                        .map(NarrowView::settle))
                .noneMatch(s -> s.contains("terminals open"));
    }
}
