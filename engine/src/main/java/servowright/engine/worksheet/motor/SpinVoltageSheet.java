package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.VoltageBasis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;

/** What a meter and a scope should show on a motor that is turned from outside. */
public final class SpinVoltageSheet implements ConstantsSheet {
    private static final Declaration DECLARATION = new Declaration(
            "spin-voltage",
            "Voltage to expect from a spin",
            "Before the drill turns: what stands between two terminals at a speed, and at which frequency.",
            ConstantInputs.and(UsualInputs.speed("speed", "speed of the shaft")),
            List.of(
                    new Result("line_peak", "peak between two terminals", "V"),
                    new Result("line_rms", "RMS between two terminals", "V"),
                    new Result("phase_peak", "peak from a terminal to the star point", "V"),
                    new Result("rectified", "mean behind a six-pulse rectifier, before its diodes", "V"),
                    new Result("frequency", "electrical frequency", "Hz")),
            List.of(Citations.POWER_BALANCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("speed").work(c -> {
            GivenPoles poles = GivenPoles.of(c);
            GivenConstants.of(c, poles).common(c).ifPresent(pLambda -> fill(c, pLambda, poles));
        });
    }

    private static void fill(Calculation c, Term pLambda, GivenPoles poles) {
        Term speed = c.given("ω", "speed");
        line(c, "line_peak", "√3 · ", VoltageBasis.LINE_PEAK, pLambda, speed);
        line(c, "line_rms", "√(3/2) · ", VoltageBasis.LINE_RMS, pLambda, speed);
        line(c, "phase_peak", "", VoltageBasis.PHASE_PEAK, pLambda, speed);
        line(c, "rectified", "3√3/π · ", VoltageBasis.SIX_STEP, pLambda, speed);
        poles.found()
                .ifPresent(p -> c.result(
                        "frequency",
                        "{f} = {p} · {ω} / 2π",
                        "definition of pole pairs",
                        x -> ElectricalSpeed.hertz(x[1], (int) x[0]),
                        p,
                        speed));
    }

    private static void line(Calculation c, String name, String factor, VoltageBasis basis, Term pLambda, Term speed) {
        c.result(
                name,
                "{V} = " + factor + "{pλ} · {ω}",
                Citations.POWER_BALANCE,
                x -> new MotorConstants(x[0]).emfConstant(basis) * x[1],
                pLambda,
                speed);
    }
}
