package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;

/** Loaded from free to standing still at one voltage. */
final class LoadCurveTask implements MotorTask {
    /** Phases in series between two terminals. */
    private static final double IN_SERIES = 2;

    @Override
    public TestKind kind() {
        return TestKind.LOAD_CURVE;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.FLUX_LINKAGE);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        Phrase brake = applied(bench)
                .map(u -> Phrase.of(
                                "Shaft on a brake with a torque sensor, or a lever on a scale. Drive in block commutation at"
                                        + " {u} between its terminals, where the motor at rest carries no more than it stands.")
                        .with("u", u, "V"))
                .orElse(Phrase.of(
                        "Shaft on a brake with a torque sensor, or a lever on a scale. Drive in block commutation at a"
                                + " voltage at which the motor at rest carries no more than it stands."));
        return List.of(
                brake,
                Phrase.of(
                        "Braked from free to standing still in ten steps or one slow sweep; speed, torque and motor current"
                                + " recorded, the power from the supply too: its current is not the motor's."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                FIRST_TURN,
                Phrase.of("A lever strikes and a brake burns: stop the lever on both sides, let the brake cool."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        List<Sought> constants = List.of(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS);
        CurrentBasis basis = basis(bench.test());
        List<Question> all = new ArrayList<>();
        all.add(new Question(
                "torque per ampere",
                Phrase.of("{basis}, slope from free to standing still").with("basis", basis.words()),
                "mN m/A",
                Dimension.TORQUE_CONSTANT,
                constants,
                List.of(),
                Question.limits(bench.instruments(), Reads.TORQUE, Reads.METER_CURRENT),
                x -> of(x).torqueConstant(basis),
                bench.ratios()));
        applied(bench)
                .ifPresent(u -> all.add(new Question(
                                "speed at which the current falls to nothing",
                                Phrase.of("at {u}").with("u", u, "V"),
                                "rpm",
                                Dimension.SPEED,
                                constants,
                                List.of(u),
                                Question.limits(bench.instruments(), Reads.METER_VOLTAGE, Reads.SPEED),
                                x -> x[2] * of(x).speedConstant(VoltageBasis.SIX_STEP),
                                bench.ratios())
                        .told(test -> Told.figure("Ke")
                                .in(test)
                                .map(ke -> new Quantity(u.si() / ke.si(), Dimension.SPEED)))));
        return all;
    }

    private static MotorConstants of(double... x) {
        return MotorConstants.ofFluxLinkage(x[0], (int) Math.round(x[1]));
    }

    private static Optional<Known> applied(MotorBench bench) {
        return bench.test().isPresent() ? bench.stated(TestFigure.APPLIED_VOLTAGE) : bench.voltsAtRest(IN_SERIES);
    }

    /** As the channels say; block commutation otherwise, as the reduction takes it. */
    private static CurrentBasis basis(Optional<BenchTest> test) {
        String said = String.join(" ", test.map(t -> t.channels().values()).orElse(List.of()));
        if (said.contains(CurrentBasis.PHASE_RMS.words())) {
            return CurrentBasis.PHASE_RMS;
        }
        return said.contains(CurrentBasis.Q_AXIS.words()) ? CurrentBasis.Q_AXIS : CurrentBasis.SIX_STEP;
    }
}
