package servowright.engine.procedure;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.Instruments;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.machine.Axis;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Supply;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.PhaseCurrent;
import servowright.engine.motor.RatioName;
import servowright.engine.motor.SpeedReach;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;
import servowright.engine.thermal.CopperHeat;

/**
 * A motor on the bench for one test: the conditions that the test states or, while it was not made, those to make it under.
 *
 * @param drive of the first axis that has one
 * @param test  the test made, if it was
 */
record MotorBench(
        Motor motor,
        IdentifiedMotor identified,
        Optional<Drive> drive,
        Optional<Supply> supply,
        Optional<BenchTest> test) {
    private static final double ROOM_KELVIN = 293.15;

    /** Limits of a simple thermometer (common practice, no source). */
    private static final double THERMOMETER_KELVIN = 2;

    /** A hand drill without load turns somewhat faster than this (common practice, no source). */
    private static final double DRILL_RPM = 500;

    /** A first test current as a share of the rated one: it warms the winding by about a hundredth of what that does. */
    private static final double GENTLE = 0.1;

    static MotorBench of(IdentifiedMachine machine, Motor motor, IdentifiedMotor identified) {
        Optional<Drive> drive = machine.machine().axes().values().stream()
                .filter(a -> a.motor().filter(motor.name()::equals).isPresent())
                .map(Axis::drive)
                .flatMap(Optional::stream)
                .findFirst()
                .map(name -> machine.machine().drives().get(name));
        return new MotorBench(motor, identified, drive, machine.machine().supply(), Optional.empty());
    }

    /** The same for a test that was made. */
    MotorBench during(BenchTest made) {
        return new MotorBench(motor, identified, drive, supply, Optional.of(made));
    }

    Instruments instruments() {
        return new Instruments(test.map(BenchTest::instrument).orElse(Map.of()));
    }

    Optional<Known> stated(TestFigure figure) {
        return test.flatMap(t -> t.figures().known(figure));
    }

    /** Temperature during the test: as stated, with the limits of a thermometer, else that of a room. */
    Known temperature(TestFigure figure) {
        Optional<Declared> declared = test.flatMap(t -> t.figures().get(figure));
        boolean limited =
                declared.filter(d -> d.stated().spread() != Stated.Spread.VALUE).isPresent();
        Known kelvin = declared.map(Declared::known)
                .orElseGet(() -> Known.exact(Quantity.of(20, "degC"), Origin.ASSUMED, "room"));
        return limited ? kelvin : kelvin.withPart(Source.of("thermometer"), THERMOMETER_KELVIN / Math.sqrt(3));
    }

    /** Speed of a drill, as stated or to be read by a tachometer with its limits. */
    Known drillSpeed() {
        return stated(TestFigure.SPEED).orElseGet(() -> {
            Quantity speed = drill();
            double u = instruments().accuracy(Instruments.Reads.SPEED).standardUncertainty(speed.si());
            return condition(speed).withPart(Source.of("tachometer"), u);
        });
    }

    /** What a drill reaches and the rotor stands. */
    private Quantity drill() {
        Quantity usual = Quantity.of(DRILL_RPM, "rpm");
        return motor.figures()
                .known(MotorFigure.TOP_SPEED)
                .map(k -> k.value().in("rpm") / 2)
                .filter(half -> half < DRILL_RPM)
                .map(half -> Quantity.of(round(half), "rpm"))
                .orElse(usual);
    }

    /** Half of what the drive could reach without load on the empty supply; that of a drill while that is not known. */
    Known drivenSpeed() {
        Optional<Declared> volts = supply.flatMap(s -> s.figures().get(SupplyFigure.VOLTAGE));
        Optional<Known> flux = identified.best(MotorParameter.FLUX_LINKAGE).found();
        Optional<Known> pairs = identified.best(MotorParameter.POLE_PAIRS).found();
        if (volts.isEmpty() || flux.isEmpty() || pairs.isEmpty()) {
            return condition(drill());
        }
        double phasePeak = volts.get().stated().lower().si() / Math.sqrt(3);
        MotorConstants constants = MotorConstants.ofFluxLinkage(
                flux.get().si(), (int) Math.round(pairs.get().si()));
        double half = SpeedReach.idealNoLoadMechRadPerS(constants, phasePeak) / 2;
        Quantity speed = new Quantity(half, Dimension.SPEED);
        return condition(Quantity.of(round(speed.in("rpm")), "rpm"));
    }

    /** What the motor stands for good, phase peak: as rated, else from its heat; the smaller where both are known. */
    private Optional<Double> ratedAmp() {
        Optional<Double> rated = motor.figures().get(MotorFigure.RATED_CURRENT).flatMap(MotorBench::phasePeakAmp);
        Optional<Double> heat = fromHeatAmp();
        return rated.isPresent() && heat.isPresent() ? rated.map(r -> Math.min(r, heat.get())) : rated.or(() -> heat);
    }

    private static Optional<Double> phasePeakAmp(Declared declared) {
        CurrentBasis basis = declared.stated().currentBasis().orElse(CurrentBasis.Q_AXIS);
        return basis == CurrentBasis.SUPPLY
                ? Optional.empty()
                : Optional.of(declared.si() * PhaseCurrent.peakPer(basis));
    }

    private Optional<Double> fromHeatAmp() {
        Optional<Known> path = new Beforehand(motor, identified, Set.of())
                .apply(MotorParameter.THERMAL_RESISTANCE)
                .found()
                .map(Question.Found::value);
        Optional<Known> limit = motor.figures().known(MotorFigure.WINDING_LIMIT);
        Optional<Known> ohm = identified.best(MotorParameter.PHASE_RESISTANCE).found();
        if (path.isEmpty() || limit.isEmpty() || ohm.isEmpty()) {
            return Optional.empty();
        }
        CopperHeat heat = new CopperHeat(
                ROOM_KELVIN, path.get().si(), ROOM_KELVIN, Conductor.COPPER_IACS.relativePerKelvin(ROOM_KELVIN));
        // The torque that goes with it is not asked for: any constant serves.
        return Optional.of(
                heat.continuous(limit.get().si(), ohm.get().si(), 1, 0).phasePeakAmp());
    }

    /**
     * A share of what the motor stands, in round figures. While that is not known: a tenth of what the drive gives for good,
     * or 1 A, whatever the share.
     */
    Known current(double share) {
        double careful = drive.flatMap(d -> d.figures().get(DriveFigure.CONTINUOUS_CURRENT))
                .flatMap(MotorBench::phasePeakAmp)
                .map(amp -> GENTLE * amp)
                .orElse(1.0);
        double amp = ratedAmp().map(a -> share * a).orElse(careful);
        return condition(Quantity.of(round(amp), "A"));
    }

    /** What the resistance of the winding leaves of a voltage when it must not send more than the motor stands through it at rest. */
    Optional<Known> voltsAtRest(double ohmPerPhase) {
        return identified
                .best(MotorParameter.PHASE_RESISTANCE)
                .found()
                .map(r -> condition(
                        Quantity.of(round(ohmPerPhase * r.si() * current(1).si()), "V")));
    }

    /** A current that hardly warms the winding. */
    Known gentleCurrent() {
        return current(GENTLE);
    }

    static Known condition(Quantity value) {
        return Known.exact(value, Origin.ASSUMED, "to be set");
    }

    /** To one digit, or 1.5 and 2.5 of it: a figure to set an instrument to. */
    static double round(double value) {
        double ten = Math.pow(10, Math.floor(Math.log10(value)));
        double[] marks = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8};
        return Arrays.stream(marks)
                        .filter(m -> m * ten <= value * (1 + 1e-9))
                        .max()
                        .orElse(1)
                * ten;
    }

    /** Ratios that a reading of this motor may be off by, beside the usual ones. */
    List<RatioName> ratios() {
        return identified.best(MotorParameter.POLE_PAIRS).found().stream()
                .map(p -> RatioName.polePairs((int) Math.max(1, Math.round(p.si()))))
                .toList();
    }

    static double roomKelvin() {
        return ROOM_KELVIN;
    }
}
