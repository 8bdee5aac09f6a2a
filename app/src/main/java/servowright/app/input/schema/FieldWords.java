package servowright.app.input.schema;

import java.util.ArrayList;
import java.util.List;
import servowright.app.input.form.KeyRange;
import servowright.app.input.form.QualifierCheck;
import servowright.app.input.form.Shape;
import servowright.engine.machine.Key;

/** What people should know about a key, in words. */
final class FieldWords {
    private FieldWords() {}

    /** What may stand there. */
    static String allowed(Shape shape) {
        if (shape instanceof Shape.Figure figure) {
            String words = figure.words().isEmpty() ? "" : ", or " + String.join(", ", figure.words());
            return KeyRange.words(figure.key())
                    + words
                    + (figure.key().range() ? "; may be a range" : "")
                    + (figure.key().several() ? "; may be a list" : "");
        }
        if (shape instanceof Shape.Choice choice) {
            return String.join(", ", choice.words());
        }
        if (shape instanceof Shape.Reference reference) {
            return "a name under " + reference.section();
        }
        return "";
    }

    /** What may stand in square brackets. */
    static String brackets(Shape shape) {
        if (!(shape instanceof Shape.Figure figure)) {
            return "";
        }
        List<String> words = new ArrayList<>(QualifierCheck.words(figure.key()));
        if (figure.key().qualifiers().contains(Key.Qualifier.TEMPERATURE)) {
            words.add("a temperature");
        }
        return String.join(", ", words);
    }
}
