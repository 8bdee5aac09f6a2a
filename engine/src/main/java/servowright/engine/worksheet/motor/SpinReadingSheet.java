package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;
import servowright.engine.worksheet.Basis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** Motor constants from the voltage of a motor that is turned from outside. */
public final class SpinReadingSheet implements Worksheet {
    private static final String SPIN =
            "open-circuit voltage at a known speed, IEEE Std 1812 (scope seen); sinusoidal back-EMF";

    private static final Declaration DECLARATION = new Declaration(
            "spin-reading",
            "Constants from a spin",
            "Voltage at the open terminals of a turning motor, with the electrical frequency or the speed of the shaft. For a"
                    + " whole recording use a bench test: it fits the fundamental.",
            List.of(
                    voltage("voltage", "voltage read"),
                    voltage("peak_to_peak", "the same as peak to peak"),
                    UsualInputs.frequency("frequency", "electrical frequency", "350 Hz"),
                    Input.quantity("speed", Dimension.SPEED, "speed of the shaft", "3000 rpm")
                            .within(Quantity.of(1e-3, "rpm"), Quantity.of(1e6, "rpm")),
                    UsualInputs.polePairs(),
                    UsualInputs.magnets()),
            List.of(
                    new Result("speed_out", "speed of the shaft", "rpm"),
                    new Result("emf_constant_phase_peak", "back-EMF constant, phase peak", "V s/rad"),
                    new Result("speed_constant_line_peak", "speed constant, line peak", "rpm/V"),
                    new Result("torque_constant_q_axis", "torque constant per q-axis ampere", "N m/A"),
                    new Result("flux_linkage", "flux linkage, phase peak", "mWb"),
                    new Result("line_rms", "what a true RMS meter shows between two terminals", "V")),
            List.of(SPIN, Citations.POWER_BALANCE));

    private static Input voltage(String name, String meaning) {
        return Input.quantity(name, Dimension.VOLTAGE, meaning, "7.1 V [line peak]")
                .within(Quantity.of(1e-6, "V"), Quantity.of(1e4, "V"))
                .statedAs(Basis.VOLTAGE);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        return new Contradictions(DECLARATION)
                .when(GivenPoles.odd(inputs), "magnets", "an odd number of magnets is a miscount", "Count again.")
                .when(
                        inputs.has("voltage") && inputs.has("peak_to_peak"),
                        "peak_to_peak",
                        "the voltage is given twice",
                        "Give voltage or peak_to_peak.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean poles = inputs.has("pole_pairs") || inputs.has("magnets");
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("voltage") || inputs.has("peak_to_peak"),
                        "the voltage read",
                        "give voltage, for example 7.1 V [line peak]")
                .needs(
                        inputs.has("speed") || (inputs.has("frequency") && poles),
                        "the speed, or the frequency with the pole pairs",
                        "read the frequency and count the magnets")
                .work(SpinReadingSheet::fill);
    }

    private static void fill(Calculation c) {
        GivenPoles poles = GivenPoles.of(c);
        Term speed = speed(c, poles);
        String input = c.inputs().has("voltage") ? "voltage" : "peak_to_peak";
        VoltageBasis basis = c.stated(input).voltageBasis().orElseGet(() -> {
            c.assume(Phrase.of("basis of the voltage not stated: read as line peak, between two terminals"));
            return VoltageBasis.LINE_PEAK;
        });
        double half = input.equals("voltage") ? 1 : 0.5;
        Term pLambda = c.result(
                "emf_constant_phase_peak",
                "{pλ} = " + (half < 1 ? "1/2 · " : "") + "{V} / (" + Bases.perFlux(ConstantBasis.of(basis)) + " · {ω})",
                SPIN,
                x -> MotorConstants.ofEmfConstant(half * x[0] / x[1], basis).emfPhasePeakVoltSecondPerRad(),
                c.given("V", input),
                speed);
        constants(c, poles, speed, pLambda);
    }

    private static void constants(Calculation c, GivenPoles poles, Term speed, Term pLambda) {
        c.result(
                "speed_constant_line_peak",
                "{Kv} = 1 / (√3 · {pλ})",
                Citations.POWER_BALANCE,
                x -> new MotorConstants(x[0]).speedConstant(VoltageBasis.LINE_PEAK),
                pLambda);
        c.result(
                "torque_constant_q_axis",
                "{Kt} = 3/2 · {pλ}",
                Citations.POWER_BALANCE,
                x -> new MotorConstants(x[0]).torqueConstant(CurrentBasis.Q_AXIS),
                pLambda);
        c.result(
                "line_rms",
                "{V rms} = √(3/2) · {pλ} · {ω}",
                Citations.POWER_BALANCE,
                x -> new MotorConstants(x[0]).emfConstant(VoltageBasis.LINE_RMS) * x[1],
                pLambda,
                speed);
        poles.found()
                .ifPresent(p -> c.result(
                        "flux_linkage",
                        "{λ} = {pλ} / {p}",
                        "definition of the flux linkage, phase peak",
                        x -> new MotorConstants(x[0]).fluxLinkageWeberPeak((int) x[1]),
                        pLambda,
                        p));
    }

    private static Term speed(Calculation c, GivenPoles poles) {
        if (c.inputs().has("speed")) {
            return c.result("speed_out", "{ω} = {speed}", "as given", x -> x[0], c.given("speed", "speed"));
        }
        return c.result(
                "speed_out",
                "{ω} = 2π · {f} / {p}",
                "definition of pole pairs",
                x -> ElectricalSpeed.mechRadPerS(x[0], (int) x[1]),
                c.given("f", "frequency"),
                poles.found().orElseThrow());
    }
}
