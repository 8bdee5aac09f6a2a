package servowright.engine.worksheet.motor;

import static servowright.engine.worksheet.motor.Citations.POWER_BALANCE;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.VoltageBasis;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;

/** Any of a motor's constants on any basis to all of them on every basis. */
public final class MotorConstantsSheet implements ConstantsSheet {
    private static final Declaration DECLARATION = new Declaration(
            "motor-constants",
            "Motor constants on every basis",
            "Takes any speed, back-EMF or torque constants and flux linkages of one motor and gives all of them on every"
                    + " basis. Several figures are checked against each other, and a disagreement is named by its ratio."
                    + " For sinusoidal back-EMF; friction, iron loss and saturation are not in it.",
            ConstantInputs.and(UsualInputs.resistance("resistance", "winding resistance")),
            results(),
            List.of(POWER_BALANCE, Citations.MEAN_OF_LOGS));

    private static List<Result> results() {
        List<Result> results = new ArrayList<>();
        results.add(new Result("reading", "bases the figures were read on", ""));
        for (CurrentBasis basis : Bases.MOTOR_CURRENTS) {
            results.add(new Result(torqueName(basis), "torque constant per ampere " + basis.words(), "N m/A"));
        }
        for (VoltageBasis basis : VoltageBasis.values()) {
            results.add(new Result(
                    Bases.name("speed_constant_", basis.words()), "speed constant, " + basis.words(), "rpm/V"));
        }
        for (VoltageBasis basis : VoltageBasis.values()) {
            results.add(new Result(
                    Bases.name("emf_constant_", basis.words()), "back-EMF constant, " + basis.words(), "V s/rad"));
        }
        results.add(
                new Result("torque_constant_power_invariant", "torque constant per power-invariant ampere", "N m/A"));
        results.add(new Result("flux_linkage", "flux linkage of one phase, peak", "mWb"));
        results.add(new Result("flux_linkage_power_invariant", "flux linkage, power-invariant", "mWb"));
        results.add(new Result("pole_pairs_implied", "pole pairs that a flux linkage and the other figures imply", ""));
        results.add(new Result("phase_resistance", "resistance of one phase of the equivalent star", "ohm"));
        results.add(new Result("motor_constant", "torque per root of copper loss, sinusoidal current", "N m/sqrt(W)"));
        results.add(new Result("motor_constant_six_step", "torque per root of copper loss, six-step", "N m/sqrt(W)"));
        results.add(new Result("spread", "largest departure of a figure from the common motor", "%"));
        results.add(new Result("agreement", "whether the figures describe one motor", ""));
        return List.copyOf(results);
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).work(MotorConstantsSheet::fill);
    }

    private static void fill(Calculation c) {
        GivenPoles poles = GivenPoles.of(c);
        GivenConstants given = GivenConstants.of(c, poles);
        Optional<Term> found = given.common(c);
        if (found.isEmpty()) {
            return;
        }
        Term pLambda = found.get();
        c.word("reading", given.reading());
        for (CurrentBasis basis : Bases.MOTOR_CURRENTS) {
            c.result(
                    torqueName(basis),
                    "{Kt} = " + Bases.perFlux(ConstantBasis.of(basis)) + " · {pλ}",
                    POWER_BALANCE,
                    x -> new MotorConstants(x[0]).torqueConstant(basis),
                    pLambda);
        }
        voltages(c, pLambda);
        c.result(
                "torque_constant_power_invariant",
                "{Kt} = √(3/2) · {pλ}",
                POWER_BALANCE,
                x -> new MotorConstants(x[0]).torqueConstantPowerInvariant(),
                pLambda);
        given.impliedPolePairs(c, pLambda);
        poles.found().ifPresent(p -> fluxLinkage(c, pLambda, p));
        if (c.inputs().has("resistance")) {
            motorConstant(c, pLambda);
        }
        given.judge(c, poles, pLambda);
    }

    private static void voltages(Calculation c, Term pLambda) {
        for (VoltageBasis basis : VoltageBasis.values()) {
            Term ke = c.result(
                    Bases.name("emf_constant_", basis.words()),
                    "{Ke} = " + Bases.perFlux(ConstantBasis.of(basis)) + " · {pλ}",
                    POWER_BALANCE,
                    x -> new MotorConstants(x[0]).emfConstant(basis),
                    pLambda);
            c.result(
                    Bases.name("speed_constant_", basis.words()),
                    "{Kv} = 1 / {Ke}",
                    "speed at which the back-EMF is one volt",
                    x -> MotorConstants.ofEmfConstant(x[0], basis).speedConstant(basis),
                    ke);
        }
    }

    private static void fluxLinkage(Calculation c, Term pLambda, Term polePairs) {
        c.result(
                "flux_linkage",
                "{λ} = {pλ} / {p}",
                "definition of the flux linkage, phase peak",
                x -> new MotorConstants(x[0]).fluxLinkageWeberPeak((int) x[1]),
                pLambda,
                polePairs);
        c.result(
                "flux_linkage_power_invariant",
                "{λ} = √(3/2) · {pλ} / {p}",
                "power-invariant transformation: voltages and currents √(3/2) of the amplitude-invariant ones",
                x -> new MotorConstants(x[0]).fluxLinkagePowerInvariantWeber((int) x[1]),
                pLambda,
                polePairs);
    }

    private static void motorConstant(Calculation c, Term pLambda) {
        Term phase = PhaseValue.resistance(c, "resistance", "phase_resistance");
        c.result(
                "motor_constant",
                "{Km} = √(3/2) · {pλ} / √{R}",
                "torque 3/2 pλ i and copper loss 3/2 R i²; the same for any number of turns",
                x -> new MotorConstants(x[0]).perRootWatt(x[1]),
                pLambda,
                phase);
        c.result(
                "motor_constant_six_step",
                "{Km} = 3√3/π · {pλ} / √(2 · {R})",
                "torque 3√3/π pλ I and copper loss 2 R I² in two phases",
                x -> new MotorConstants(x[0]).perRootWattSixStep(x[1]),
                pLambda,
                phase);
    }

    private static String torqueName(CurrentBasis basis) {
        return Bases.name("torque_constant_", basis.words());
    }
}
