package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.CurrentAngle;
import servowright.engine.motor.ShortCircuit;
import servowright.engine.motor.Winding;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;

/** The three terminals joined while the shaft is turned. */
public final class ShortCircuitSheet implements ConstantsSheet {
    private static final String STEADY =
            "rotor-frame voltage equations with zero voltage, settled; test as in IEEE Std 1812 (scope seen)";

    private static final Declaration DECLARATION = new Declaration(
            "short-circuit",
            "Short-circuit current and braking torque",
            "Settled current and braking torque of a motor with its terminals joined, at a speed and at its worst speed. The"
                    + " first peak after joining at speed can be about twice the settled one.",
            GivenMotor.and(UsualInputs.speed("speed", "speed of the motor shaft")),
            List.of(
                    new Result("current_peak", "phase current, peak", "A"),
                    new Result("current_rms", "phase current, RMS", "A"),
                    new Result("braking_torque", "torque that brakes the shaft", "N m"),
                    new Result(
                            "characteristic_current", "current towards which it tends at high speed, phase peak", "A"),
                    new Result("worst_speed", "speed of the largest braking torque, without saliency", "rpm"),
                    new Result("worst_torque", "largest braking torque, without saliency", "N m")),
            List.of(STEADY));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return GivenMotor.needInductance(Calculation.of(DECLARATION, inputs).needs("resistance"))
                .work(c -> GivenMotor.of(c).filter(GivenMotor::known).ifPresent(motor -> fill(c, motor)));
    }

    private static void fill(Calculation c, GivenMotor motor) {
        if (c.inputs().has("speed")) {
            Term[] terms = motor.terms(c.given("ω", "speed"));
            String d = "D = {R}² + (p{ω})² {Ld} {Lq}";
            Term peak = c.result(
                    "current_peak",
                    "{i} = {pλ}{ω} √((p{ω}{Lq})² + {R}²) / D, " + d,
                    STEADY,
                    x -> shorted(motor, x).phasePeakAmp(),
                    terms);
            c.result("current_rms", "{I} = {i} / √2", "peak of a sine", x -> x[0] / Math.sqrt(2), peak);
            c.result(
                    "braking_torque",
                    "{T} = 3/2 ({pλ} + p({Ld} − {Lq}) id) iq at id = −{pλ}{ω} p{ω}{Lq}/D, iq = −{pλ}{ω}{R}/D, " + d,
                    STEADY,
                    x -> shorted(motor, x).brakeNewtonMetre(),
                    terms);
        }
        c.result(
                "characteristic_current",
                "{i∞} = {pλ} / (p{Ld})",
                STEADY,
                x -> CurrentAngle.characteristicAmp(motor.winding(x)),
                motor.terms());
        c.result(
                "worst_speed",
                "{ω worst} = {R} / (p{Ld})",
                STEADY,
                x -> worst(motor, x).mechRadPerS(),
                motor.terms());
        c.result(
                "worst_torque",
                "{T worst} = 3/4 · {pλ}² / (p{Ld})",
                STEADY,
                x -> worst(motor, x).brakeNewtonMetre(),
                motor.terms());
    }

    private static ShortCircuit shorted(GivenMotor motor, double[] x) {
        return ShortCircuit.of(motor.winding(x), GivenMotor.further(x, 0));
    }

    private static ShortCircuit.Peak worst(GivenMotor motor, double[] x) {
        Winding w = motor.winding(x);
        return ShortCircuit.peak(w.phaseOhm(), w.dHenry(), w.fluxWeberPeak(), w.polePairs());
    }
}
