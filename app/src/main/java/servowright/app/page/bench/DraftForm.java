package servowright.app.page.bench;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.view.RecordingView;
import servowright.engine.known.Problem;

/**
 * A recording that was dropped, as it was understood, and what is to be said about it.
 *
 * @param said     answers so far, by key of bench.yaml
 * @param view     how it was understood; empty while a question is open
 * @param problems questions and mistakes
 * @param motors   to choose from
 * @param plot     address of its plots
 */
public record DraftForm(
        Staged staged,
        Map<String, String> said,
        Optional<RecordingView> view,
        List<Problem> problems,
        List<String> motors,
        String plot) {
    /**
     * A field about the reading of the file.
     *
     * @param choices words to choose from; empty for free text
     */
    public record Field(String key, String label, String how, List<String> choices) {}

    private static final List<Field> READING = List.of(
            new Field(
                    "sample_interval",
                    "time between two rows",
                    "for example 20 us; none when the rows are points of a" + " curve",
                    List.of()),
            new Field(
                    "time_column", "column that holds the time", "its number or name with its unit, 1 [ms]", List.of()),
            new Field("delimiter", "mark between cells", "", List.of("comma", "semicolon", "tab", "blank")),
            new Field("decimal", "mark inside a number", "", List.of("point", "comma")),
            new Field("from", "first time to take", "for example 0.2 s", List.of()),
            new Field("to", "last time to take", "for example 1.4 s", List.of()),
            new Field("every", "rows to gather into one mean", "for example 10", List.of()),
            new Field("segment", "which of several segments", "1 for the first", List.of()),
            new Field("drop_outs", "single samples that fall out", "", List.of("keep", "repair")));

    private static final List<Field> TEST = List.of(
            new Field("speed", "speed of the shaft", "for a spin: 410 rpm ± 2 rpm", List.of()),
            new Field("magnets_at", "temperature of the magnets", "for a spin: 19 degC", List.of()),
            new Field("winding_at", "temperature of the winding", "21 degC", List.of()),
            new Field("step_voltage", "voltage of the step", "for an inductance step: 2.0 V ± 1 %", List.of()),
            new Field("shunt", "shunt in series", "for an inductance step: 0.1 ohm ± 1 %", List.of()),
            new Field("leads", "resistance of the leads", "12 mohm", List.of()),
            new Field("probe", "probe factor to multiply by", "10", List.of()));

    public DraftForm {
        problems = List.copyOf(problems);
        motors = List.copyOf(motors);
    }

    /** Fields that answer an open question, in their order. */
    public List<Field> asked() {
        return READING.stream().filter(f -> !wrong(f.key()).isEmpty()).toList();
    }

    /** The other fields about the reading of the file. */
    public List<Field> reading() {
        return READING.stream().filter(f -> wrong(f.key()).isEmpty()).toList();
    }

    /** Fields about the test. */
    public List<Field> test() {
        return TEST;
    }

    public String value(String key) {
        return said.getOrDefault(key, "");
    }

    /** What is wrong with the answer to one key, or asked there. */
    public List<Problem> wrong(String key) {
        return problems.stream()
                .filter(p -> key.equals(last(p)) || p.place().path().contains(" / " + key + " / "))
                .toList();
    }

    /** Problems that no field shows. */
    public List<Problem> others() {
        return problems.stream()
                .filter(p -> READING.stream().noneMatch(f -> f.key().equals(last(p)))
                        && TEST.stream().noneMatch(f -> f.key().equals(last(p)))
                        && !last(p).equals("test")
                        && !last(p).equals("motor"))
                .toList();
    }

    private static String last(Problem problem) {
        String path = problem.place().path();
        return path.contains(" / ") ? path.substring(path.lastIndexOf(" / ") + 3) : path;
    }
}
