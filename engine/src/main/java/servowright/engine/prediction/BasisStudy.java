package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Propagation;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.StatedConstant;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.VoltageBasis;

/** On which basis do the stated figures of a motor agree with its bench? */
public final class BasisStudy {
    private static final double EXACT = 1e-6;

    private BasisStudy() {}

    /** Every figure of a motor that has a basis. */
    public static List<StatedFigure> of(Motor motor, IdentifiedMotor identified) {
        Optional<Integer> pairs =
                identified.best(MotorParameter.POLE_PAIRS).found().map(p -> (int) Math.round(p.si()));
        Optional<Known> flux = measured(identified, MotorParameter.FLUX_LINKAGE);
        Optional<Known> ohm = measured(identified, MotorParameter.PHASE_RESISTANCE);
        List<StatedFigure> found = new ArrayList<>();
        for (MotorFigure figure : constants()) {
            motor.figures().all(figure).forEach(d -> found.add(constant(figure, d, pairs, flux)));
        }
        motor.figures().all(MotorFigure.RESISTANCE).forEach(d -> found.add(resistance(d, ohm)));
        return found;
    }

    /** Speed per line peak volt of a flux linkage: how people hold it in their heads. */
    public static Known lineSpeedConstant(Known flux, int polePairs) {
        return Propagation.derive(
                Dimension.SPEED_CONSTANT,
                x -> MotorConstants.ofFluxLinkage(x[0], polePairs).speedConstant(VoltageBasis.LINE_PEAK),
                List.of(flux));
    }

    private static List<MotorFigure> constants() {
        return List.of(
                MotorFigure.SPEED_CONSTANT,
                MotorFigure.EMF_CONSTANT,
                MotorFigure.TORQUE_CONSTANT,
                MotorFigure.FLUX_LINKAGE);
    }

    private static Optional<Known> measured(IdentifiedMotor identified, MotorParameter what) {
        return Optional.ofNullable(identified.parameters().get(what)).map(Parameter::candidates).stream()
                .flatMap(List::stream)
                .map(Candidate::value)
                .filter(v -> v.origin() == Origin.MEASURED || v.restsOn().contains(Origin.MEASURED))
                .findFirst();
    }

    private static StatedFigure constant(
            MotorFigure figure, Declared declared, Optional<Integer> pairs, Optional<Known> flux) {
        StatedConstant open = open(figure, declared.si(), pairs.orElse(1));
        List<StatedFigure.Reading> readings = open.candidates().stream()
                .map(basis -> new StatedFigure.Reading(
                        basis.words(), pairs.flatMap(p -> flux.map(f -> ratio(figure, declared, p, f, basis)))))
                .toList();
        Optional<String> stated = figure == MotorFigure.TORQUE_CONSTANT
                ? declared.stated().currentBasis().map(CurrentBasis::words)
                : declared.stated().voltageBasis().map(VoltageBasis::words);
        return new StatedFigure(Wanted.words(figure), declared, fluxIsPhasePeak(figure, stated), readings);
    }

    /** A flux linkage is phase peak by definition; only another basis is worth a word. */
    private static Optional<String> fluxIsPhasePeak(MotorFigure figure, Optional<String> stated) {
        return figure == MotorFigure.FLUX_LINKAGE
                ? Optional.of(stated.orElse(VoltageBasis.PHASE_PEAK.words()))
                : stated;
    }

    private static Known ratio(MotorFigure figure, Declared declared, int pairs, Known flux, ConstantBasis basis) {
        return Propagation.derive(
                Dimension.NUMBER,
                x -> open(figure, x[0], pairs).on(basis).emfPhasePeakVoltSecondPerRad()
                        / MotorConstants.ofFluxLinkage(x[1], pairs).emfPhasePeakVoltSecondPerRad(),
                List.of(declared.known(), flux));
    }

    private static StatedConstant open(MotorFigure figure, double si, int pairs) {
        return switch (figure) {
            case SPEED_CONSTANT -> StatedConstant.speedConstant(si, EXACT);
            case EMF_CONSTANT -> StatedConstant.emfConstant(si, EXACT);
            case TORQUE_CONSTANT -> StatedConstant.torqueConstant(si, EXACT);
            case FLUX_LINKAGE -> StatedConstant.fluxLinkage(si, pairs, EXACT);
            default -> throw new IllegalArgumentException(figure + " is no motor constant");
        };
    }

    private static StatedFigure resistance(Declared declared, Optional<Known> ohm) {
        double kelvin = declared.stated().temperature().map(t -> t.si()).orElse(WarmMotorStudy.REFERENCE_KELVIN);
        List<StatedFigure.Reading> readings = Arrays.stream(HookUp.values())
                .map(hookUp -> new StatedFigure.Reading(
                        hookUp.words(), ohm.map(found -> resistanceRatio(declared, hookUp, kelvin, found))))
                .toList();
        return new StatedFigure(
                "resistance", declared, declared.stated().hookUp().map(HookUp::words), readings);
    }

    private static Known resistanceRatio(Declared declared, HookUp hookUp, double kelvin, Known found) {
        return Propagation.derive(
                Dimension.NUMBER,
                x -> WindingResistance.atTemperature(
                                WindingResistance.phaseOhm(x[0], hookUp, 0),
                                kelvin,
                                WarmMotorStudy.REFERENCE_KELVIN,
                                Conductor.COPPER_IACS)
                        / x[1],
                List.of(declared.known(), found));
    }
}
