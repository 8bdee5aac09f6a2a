package servowright.engine.worksheet.drive;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.power.CurrentRipple;
import servowright.engine.power.Modulation;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;
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

/** Ripple of the phase current that switching leaves. */
public final class PwmRippleSheet implements Worksheet {
    private static final String EXACT =
            "switched less mean voltage integrated over a period, space-vector modulation with triangular carrier (derived)";
    private static final String LINEAR = "largest phase peak of space-vector modulation V/√3";

    private static final Declaration DECLARATION = new Declaration(
            "pwm-ripple",
            "Current ripple of switching",
            "Peak-to-peak and RMS ripple of the phase current with space-vector modulation, largest and mean over a turn of"
                    + " the fundamental. Resistance and dead time are left out.",
            List.of(
                    UsualInputs.supply(),
                    UsualInputs.inductance("inductance", "winding inductance"),
                    UsualInputs.frequency("pwm", "switching frequency", "20 kHz"),
                    Input.quantity(
                                    "depth",
                                    Dimension.NUMBER,
                                    "voltage over the largest of space-vector modulation",
                                    "1")
                            .within(Quantity.number(0), Quantity.number(1)),
                    Input.quantity("voltage", Dimension.VOLTAGE, "voltage the bridge makes", "10 V [phase peak]")
                            .within(Quantity.of(0, "V"), Quantity.of(1000, "V"))
                            .statedAs(List.of(VoltageBasis.PHASE_PEAK.words()))),
            List.of(
                    new Result("depth_used", "depth of modulation", ""),
                    new Result("peak_to_peak_share", "peak to peak in units of V/(L f)", ""),
                    new Result("rms_share", "RMS in units of V/(L f)", ""),
                    new Result("peak_to_peak", "ripple of the phase current, peak to peak", "A"),
                    new Result("rms", "ripple of the phase current, RMS", "A")),
            List.of(EXACT, LINEAR));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        double most = inputs.known("supply")
                .map(s -> Modulation.SPACE_VECTOR.phasePeakVolt(s.si(), 0))
                .orElse(1e9);
        return new Contradictions(DECLARATION)
                .when(
                        inputs.known("voltage").filter(v -> v.si() > most).isPresent(),
                        "voltage",
                        "the bridge cannot make it from this supply",
                        "It reaches supply/√3.")
                .when(
                        inputs.has("depth") && inputs.has("voltage"),
                        "depth",
                        "depth and voltage are both given",
                        "Give one.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean voltage = inputs.has("voltage") && inputs.has("supply");
        boolean winding = inputs.has("supply") && inputs.has("inductance") && inputs.has("pwm");
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("depth") || voltage,
                        "the depth of modulation, or the voltage at a supply",
                        "give depth, for example 1")
                .work(c -> fill(c, winding));
    }

    private static void fill(Calculation c, boolean winding) {
        Term depth = c.inputs().has("depth")
                ? c.result("depth_used", "{m} = {depth}", "as given", x -> x[0], c.given("depth", "depth"))
                : c.result(
                        "depth_used",
                        "{m} = {v} / ({V}/√3)",
                        LINEAR,
                        x -> x[0] / Modulation.SPACE_VECTOR.phasePeakVolt(x[1], 0),
                        c.given("v", "voltage"),
                        c.given("V", "supply"));
        c.result(
                "peak_to_peak_share",
                "{pp} = exact ripple at {m}; {m}/6 from 0.5 on",
                EXACT,
                x -> ripple(x[0]).peakToPeak(),
                depth);
        c.result(
                "rms_share",
                "{rms} = exact ripple at {m}",
                EXACT,
                x -> ripple(x[0]).rms(),
                depth);
        if (winding) {
            current(c, depth);
        }
    }

    private static void current(Calculation c, Term depth) {
        Term[] terms = {
            depth,
            c.given("V", "supply"),
            PhaseValue.inductance(c, "inductance", "L", HookUp.TWO_TERMINALS),
            c.given("f", "pwm")
        };
        c.result(
                "peak_to_peak",
                "{Δi} = share at {m} · {V} / ({L} · {f})",
                EXACT,
                x -> ripple(x[0]).peakToPeakAmp(x[1], x[2], x[3]),
                terms);
        c.result(
                "rms",
                "{Δi rms} = share at {m} · {V} / ({L} · {f})",
                EXACT,
                x -> ripple(x[0]).rmsAmp(x[1], x[2], x[3]),
                terms);
    }

    private static CurrentRipple ripple(double depth) {
        return CurrentRipple.ofSpaceVector(depth);
    }
}
