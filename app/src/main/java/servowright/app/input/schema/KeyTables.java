package servowright.app.input.schema;

import java.util.List;
import servowright.app.input.form.Field;
import servowright.app.input.form.Forms;
import servowright.app.input.form.Shape;

/** Every key of machine.yaml and bench.yaml as tables for people. */
final class KeyTables {
    private static final String HEAD = """
            # Keys of machine.yaml and bench.yaml

            Made from the declarations that the program checks the files against; not written by hand.

            Every key may be left out, unless it says *needed*; `unknown` counts as left out. A figure is a number and a
            unit, with a tolerance if it has one, and in square brackets how it was stated:

            ```
            24 V          0.24 ohm ± 2 %          1.4 mm +0.1/-0.2 mm          19.5..29.2 V
            42 rpm/V [line peak, label]           0.24 ohm [two terminals, 20 degC, measured]
            ```

            A decimal comma is taken. `label`, `data sheet`, `measured` or `guess` may stand in the brackets of any figure.
            Inside braces YAML itself ends a value at a bracket; the program reads `{peak: 12 A [q axis]}` nevertheless,
            other tools want it in quotes: `{peak: "12 A [q axis]"}`.

            The first line `# yaml-language-server: $schema=PATH` tells an editor where the schema is; the schemas are
            `docs/schema/machine.schema.json` and `docs/schema/bench.schema.json`.
            """;

    private final StringBuilder text = new StringBuilder(HEAD);

    private KeyTables() {}

    /** The page. */
    static String page() {
        KeyTables tables = new KeyTables();
        tables.file("machine.yaml", Forms.machine());
        tables.file("bench.yaml", Forms.bench());
        return tables.text.toString();
    }

    private void file(String name, Shape.Group form) {
        text.append("\n## ").append(name).append("\n");
        List<Field> plain = form.fields().stream().filter(f -> !nested(f)).toList();
        if (!plain.isEmpty()) {
            head();
            plain.forEach(f -> row("", f));
        }
        form.fields().stream().filter(KeyTables::nested).forEach(this::section);
    }

    private static boolean nested(Field f) {
        return f.shape() instanceof Shape.Group
                || f.shape() instanceof Shape.Named
                || f.shape() instanceof Shape.Listed;
    }

    private void section(Field field) {
        text.append("\n### ")
                .append(field.key())
                .append("\n\n")
                .append(sentence(field.meaning()))
                .append('\n');
        head();
        rows("", field.shape());
    }

    private void head() {
        text.append("\n| key | meaning | example | allowed | in square brackets |\n|---|---|---|---|---|\n");
    }

    private void rows(String path, Shape shape) {
        if (shape instanceof Shape.Group group) {
            group.fields().forEach(f -> row(path, f));
        } else if (shape instanceof Shape.Named named) {
            below(path + "NAME", named.each(), "the " + named.one() + " of that name");
        } else if (shape instanceof Shape.Listed listed) {
            below(path + "-", listed.each(), "one " + listed.one());
        }
    }

    private void below(String path, Shape each, String meaning) {
        if (each instanceof Shape.Group) {
            rows(path + " / ", each);
        } else {
            row("", Field.of(path, meaning, example(each), each));
        }
    }

    private static String example(Shape shape) {
        if (shape instanceof Shape.Figure f) {
            return f.key().example();
        }
        return shape instanceof Shape.Words w ? w.remedy() : "";
    }

    private void row(String path, Field f) {
        if (nested(f)) {
            rows(path + f.key() + " / ", f.shape());
            return;
        }
        text.append("| `").append(path).append(f.key()).append("` | ");
        text.append(f.meaning()).append(f.required() ? " (*needed*)" : "");
        f.with()
                .ifPresent(w -> text.append(" (*needed for ")
                        .append(String.join(", ", w.said()))
                        .append("*)"));
        text.append(" | ");
        text.append(f.example().isEmpty() ? "" : "`" + f.example() + "`").append(" | ");
        text.append(FieldWords.allowed(f.shape())).append(" | ");
        String brackets = FieldWords.brackets(f.shape());
        text.append(brackets.replaceFirst("(, )?label, data sheet, measured, guess", ""))
                .append(" |\n");
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1) + ".";
    }
}
