package servowright.app.view;

import java.util.List;
import java.util.Optional;
import servowright.engine.procedure.Agreement;
import servowright.engine.procedure.Expectation;
import servowright.engine.procedure.Window;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/**
 * One reading of the bench plan: where it should lie, and what it was.
 *
 * @param what     what is read
 * @param at       under which conditions
 * @param unit     in which window and reading are shown; empty for a pure number or while nothing is expected
 * @param test     that read it; empty while none did
 * @param expected the best estimate; empty while nothing is expected
 * @param low      lower end of the window, without unit; empty likewise
 * @param high     upper end
 * @param drawn    whether the ends come from draws
 * @param from     where the expectation comes from
 * @param needs    what is missing to expect something
 * @param read     what was read, without unit; empty while nothing was
 * @param off      reading over expected, less 1: {@code +2.4 %}; may be empty
 * @param inside   whether the reading lies within, once there are both
 * @param factor   what the ratio of a reading outside probably is; may be empty
 */
public record ExpectationView(
        String what,
        Sentence at,
        String unit,
        String test,
        Optional<FigureText> expected,
        String low,
        String high,
        boolean drawn,
        String from,
        List<NeedView> needs,
        String read,
        String off,
        Optional<Boolean> inside,
        String factor) {
    private static final Digits FEW = new Digits(4);

    public ExpectationView {
        needs = List.copyOf(needs);
    }

    static ExpectationView of(Expectation one) {
        Optional<Window> window = one.window().found();
        Unit unit = window.map(w -> UsualUnit.of(largest(w), w.expected().dimension(), one.unit()))
                .or(() -> one.read().map(r -> UsualUnit.of(r.si(), r.dimension(), one.unit())))
                .orElse(Units.named(one.unit()));
        double half = window.map(Window::halfWidth).orElse(0.0) / unit.factor();
        return new ExpectationView(
                one.what(),
                Sentence.of(one.at()),
                unit.symbol().equals("1") ? "" : unit.symbol(),
                one.test(),
                window.map(w -> FigureText.in(w.expected(), unit)),
                window.map(w -> digits(w.low(), unit, half)).orElse(""),
                window.map(w -> digits(w.high(), unit, half)).orElse(""),
                window.filter(w -> w.ends() == Window.Ends.DRAWN).isPresent(),
                window.map(Window::from).orElse(""),
                one.window()
                        .fold(
                                a -> List.of(),
                                m -> m.needs().stream().map(NeedView::of).toList()),
                one.read().map(r -> digits(r, unit, half / 10)).orElse(""),
                one.agreement().map(ExpectationView::off).orElse(""),
                one.agreement().map(Agreement::inside),
                one.agreement().flatMap(Agreement::factor).orElse(""));
    }

    private static double largest(Window window) {
        return Math.max(Math.abs(window.low().si()), Math.abs(window.high().si()));
    }

    /** To two digits of half of the window. */
    private static String digits(Quantity value, Unit unit, double half) {
        Digits.Rounded rounded = FEW.round(unit.fromSi(value.si()), half);
        return rounded.number() + rounded.power();
    }

    private static String off(Agreement agreement) {
        return agreement
                .off()
                .filter(o -> o.si() != 0)
                .map(ExpectationView::signed)
                .orElse("");
    }

    private static String signed(Quantity off) {
        String percent = new Digits(2).round(100 * Math.abs(off.si()), 0).number();
        return (off.si() < 0 ? "−" : "+") + percent + " %";
    }

    /** Whether a reading lies outside its window. */
    public boolean outside() {
        return inside.filter(i -> !i).isPresent();
    }

    /** {@code 25.7 to 32.4 V}; one figure where both ends are the same; empty while nothing is expected. */
    public String window() {
        if (low.isEmpty()) {
            return "";
        }
        String ends = low.equals(high) ? low : low + " to " + high;
        return unit.isEmpty() ? ends : ends + " " + unit;
    }

    /** The reading with its unit. */
    public String reading() {
        return unit.isEmpty() || read.isEmpty() ? read : read + " " + unit;
    }

    /** {@code inside}, or {@code outside by +73 % = √3, line against phase}; empty while there is nothing to judge. */
    public String verdict() {
        if (inside.isEmpty()) {
            return "";
        }
        String by = off.isEmpty() ? "" : ", " + off;
        return (inside.get() ? "inside" : "outside") + by + (factor.isEmpty() ? "" : " = " + factor);
    }
}
