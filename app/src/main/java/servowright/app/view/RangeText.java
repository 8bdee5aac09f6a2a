package servowright.app.view;

import servowright.engine.worksheet.Input;

/** A closed range in words: {@code 1 to 200}. */
public final class RangeText {
    private RangeText() {}

    public static String of(Input.Range range) {
        return FigureText.full(range.least()).text() + " to "
                + FigureText.full(range.most()).text();
    }
}
