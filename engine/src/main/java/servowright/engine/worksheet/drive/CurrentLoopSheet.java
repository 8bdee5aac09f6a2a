package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.control.CurrentLoop;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.motor.PhaseValue;

/** Gains of a current controller and the phase margin that its delay leaves. */
public final class CurrentLoopSheet implements Worksheet {
    private static final String CANCEL = "pole-zero cancellation, Kp = L ωc, Ki = R ωc (common practice)";
    private static final String DELAY = "open loop ωc/s with a pure delay, phase margin 90° − ωc Td";

    private static final Declaration DECLARATION = new Declaration(
            "current-loop",
            "Current loop: gains and phase margin",
            "Gains for a crossover with the zero on the winding's time constant, the margin its delay leaves, and the highest"
                    + " crossover for a margin. Phase figures go in: two-terminal figures taken for phase double the loop's"
                    + " speed. Valid while crossover times delay stays below about 1.",
            List.of(
                    UsualInputs.inductance("inductance", "winding inductance"),
                    UsualInputs.resistance("resistance", "winding resistance"),
                    Input.quantity(
                                    "crossover",
                                    Dimension.FREQUENCY,
                                    "frequency at which the open loop has gain 1",
                                    "1 kHz")
                            .orAs(Dimension.SPEED),
                    UsualInputs.frequency("pwm", "rate of control and switching", "20 kHz"),
                    Input.quantity("delay_periods", Dimension.NUMBER, "delay in periods", "1.5")
                            .within(Quantity.number(0), Quantity.number(20))
                            .orElse("1.5"),
                    Input.quantity("least_margin", Dimension.ANGLE, "phase margin to keep", "60 deg")
                            .within(Quantity.of(1, "deg"), Quantity.of(89, "deg"))
                            .orElse("60 deg"),
                    Input.quantity(
                                    "gain_found",
                                    Dimension.RESISTANCE,
                                    "proportional gain found in a drive, V/A",
                                    "0.1 V/A")
                            .within(Quantity.of(1e-9, "ohm"), Quantity.of(1e9, "ohm"))),
            List.of(
                    new Result("proportional_gain", "proportional gain", "V/A"),
                    new Result("integral_gain", "integral gain", "V/A/s"),
                    new Result("delay", "delay of the loop", "us"),
                    new Result("phase_margin", "phase margin", "deg"),
                    new Result("highest_crossover", "crossover that keeps the margin asked", "Hz"),
                    new Result("crossover_found", "crossover that the gain found gives", "Hz")),
            List.of(CANCEL, DELAY));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return new Contradictions(DECLARATION)
                .when(
                        inputs.known("crossover")
                                .filter(w -> !(w.si() > 0 && w.si() < 1e9))
                                .isPresent(),
                        "crossover",
                        "it is not above 0 and below 1 GHz",
                        "Check the unit.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("inductance", "resistance", "pwm")
                .needs(
                        inputs.has("crossover") || inputs.has("gain_found"),
                        "a crossover or a gain found",
                        "give crossover, for example 1 kHz")
                .work(CurrentLoopSheet::fill);
    }

    private static void fill(Calculation c) {
        Term henry = PhaseValue.inductance(c, "inductance", "L", HookUp.TWO_TERMINALS);
        Term ohm = PhaseValue.resistance(c, "resistance");
        Term delay = c.result(
                "delay",
                "{Td} = {n} / {f}",
                "one period to compute, half for the pulse to act",
                x -> x[0] / x[1],
                c.given("n", "delay_periods"),
                c.given("f", "pwm"));
        if (c.inputs().has("crossover")) {
            gains(c, henry, ohm, delay);
        }
        c.term("Kp found", "gain_found")
                .ifPresent(gain -> c.result(
                        "crossover_found",
                        "{fc} = {Kp found} / (2π · {L})",
                        CANCEL,
                        x -> CurrentLoop.crossoverOfGainRadPerS(x[0], x[1]) / (2 * Math.PI),
                        gain,
                        henry));
        if (delay.value().si() > 0) {
            c.result(
                    "highest_crossover",
                    "{fc} = (90° − {margin}) / (2π · {Td})",
                    DELAY,
                    x -> CurrentLoop.crossoverRadPerS(x[0], x[1]) / (2 * Math.PI),
                    c.given("margin", "least_margin"),
                    delay);
        }
    }

    private static void gains(Calculation c, Term henry, Term ohm, Term delay) {
        Term crossover = c.given("ωc", "crossover");
        boolean hertz = crossover.value().dimension().equals(Dimension.FREQUENCY);
        double radian = hertz ? 2 * Math.PI : 1;
        String w = hertz ? "2π · {ωc}" : "{ωc}";
        Term[] terms = {henry, ohm, crossover, delay};
        c.result(
                "proportional_gain",
                "{Kp} = {L} · " + w,
                CANCEL,
                x -> loop(x, radian).voltPerAmp(),
                terms);
        c.result(
                "integral_gain",
                "{Ki} = {R} · " + w,
                CANCEL,
                x -> loop(x, radian).voltPerAmpSecond(),
                terms);
        c.result(
                "phase_margin",
                "{PM} = 90° − " + w + " · {Td}",
                DELAY,
                x -> loop(x, radian).phaseMarginRad(),
                terms);
    }

    private static CurrentLoop loop(double[] x, double radian) {
        return CurrentLoop.of(x[0], x[1], radian * x[2], x[3]);
    }
}
