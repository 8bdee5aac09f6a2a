package servowright.app.page.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import servowright.app.view.TestView;
import servowright.engine.known.Problem;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestKind;

/**
 * A reading about to be taken.
 *
 * @param mark     of bench.yaml as it was read
 * @param typed    so far, by key
 * @param problems with what was typed
 * @param notice   what else is to be said; may be empty
 */
public record ReadingForm(
        TestView test, String mark, Map<String, String> typed, List<Problem> problems, String notice) {
    /** A field of a reading. */
    public record Field(String key, String meaning, String example) {}

    private static final Map<String, List<ReadingFigure>> USUAL = Map.of(
            TestKind.SPIN.words(), List.of(ReadingFigure.VOLTAGE, ReadingFigure.FREQUENCY, ReadingFigure.SPEED),
            TestKind.RESISTANCE.words(),
                    List.of(ReadingFigure.CURRENT, ReadingFigure.VOLTAGE, ReadingFigure.RESISTANCE),
            TestKind.INDUCTANCE_STEP.words(), List.of(ReadingFigure.INDUCTANCE, ReadingFigure.CURRENT));

    public ReadingForm {
        problems = List.copyOf(problems);
    }

    /** What a reading of such a test holds. */
    public List<Field> fields() {
        List<Field> fields = new ArrayList<>();
        fields.add(new Field("pair", "terminals it was taken at", "A to B"));
        for (ReadingFigure figure : USUAL.getOrDefault(test.kind(), List.of(ReadingFigure.values()))) {
            fields.add(new Field(
                    figure.key().path(), figure.key().meaning(), figure.key().example()));
        }
        return fields;
    }

    /** What is wrong with one field. */
    public List<Problem> wrong(String key) {
        return problems.stream()
                .filter(p -> p.place().path().endsWith(" / " + key))
                .toList();
    }

    /** What is wrong with none in particular. */
    public List<Problem> others() {
        return problems.stream()
                .filter(p -> fields().stream().noneMatch(f -> p.place().path().endsWith(" / " + f.key())))
                .toList();
    }

    public String value(String key) {
        return typed.getOrDefault(key, "");
    }
}
