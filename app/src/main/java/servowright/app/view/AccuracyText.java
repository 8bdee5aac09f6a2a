package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Quantity;

/** Limits of an instrument in words: {@code ± 0.1 % ± 2 mV}. */
final class AccuracyText {
    private AccuracyText() {}

    static String of(Accuracy accuracy) {
        List<String> terms = new ArrayList<>();
        if (accuracy.relative() > 0) {
            terms.add("± "
                    + FigureText.of(Quantity.number(accuracy.relative()), "%").text());
        }
        if (accuracy.absolute().si() > 0) {
            terms.add("± " + FigureText.of(accuracy.absolute(), "").text());
        }
        return terms.isEmpty() ? "taken as exact" : String.join(" ", terms);
    }
}
