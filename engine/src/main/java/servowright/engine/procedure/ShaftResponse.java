package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.ResponseParameter;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.motor.MechanicalLag;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What a free shaft does when a voltage drives it, and what a speed loop makes of its command: both are lags. */
final class ShaftResponse {
    /** A loop that holds its command ends within this share of it (common practice, no source). */
    private static final double ENDS_WITHIN = 0.05;

    private static final Phrase ON_VOLTAGE = Phrase.of("q voltage in, speed out, free shaft");
    private static final List<Sought> OF = List.of(
            MotorParameter.PHASE_RESISTANCE,
            MotorParameter.ROTOR_INERTIA,
            MotorParameter.FLUX_LINKAGE,
            MotorParameter.POLE_PAIRS);

    private ShaftResponse() {}

    /** What both ways of exciting it tell. */
    static List<Sought> settles() {
        return List.of(ResponseParameter.GAIN, ResponseParameter.TIME_CONSTANT, ResponseParameter.DELAY);
    }

    /** A bridge must make the voltage. */
    static boolean suits(MotorBench bench) {
        return bench.drive().isPresent();
    }

    /** Voltage to begin with: at rest it drives no more than the motor stands. */
    static Phrase amplitude(MotorBench bench, String before, String after) {
        return bench.voltsAtRest(1)
                .map(u -> Phrase.of(before + " of {u}, phase peak," + after).with("u", u, "V"))
                .orElse(Phrase.of(before + " that drive no more than the motor stands at rest," + after));
    }

    /** Time constant of the free shaft, as far as it is known. */
    static Optional<Double> tauSecond(MotorBench bench) {
        double[] x = OF.stream()
                .map(MotorParameter.class::cast)
                .flatMap(p -> bench.identified().best(p).found().stream())
                .mapToDouble(Known::si)
                .toArray();
        return x.length == OF.size() ? Optional.of(lag(x).tauSecond()) : Optional.empty();
    }

    private static MechanicalLag lag(double... x) {
        return MechanicalLag.of(MotorConstants.ofFluxLinkage(x[2], (int) Math.round(x[3])), x[0], x[1]);
    }

    static Question speedPerVolt(MotorBench bench) {
        return new Question(
                        "speed per volt once settled",
                        ON_VOLTAGE,
                        "rpm/V",
                        Dimension.SPEED_CONSTANT,
                        List.of(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS),
                        List.of(),
                        Question.limits(bench.instruments(), Reads.DRIVE_VOLTAGE),
                        x -> 1
                                / MotorConstants.ofFluxLinkage(x[0], (int) Math.round(x[1]))
                                        .emfPhasePeakVoltSecondPerRad(),
                        bench.ratios())
                .told(Told.value(ResponseParameter.GAIN, Dimension.SPEED_CONSTANT));
    }

    static Question timeConstant(MotorBench bench) {
        return new Question(
                        "time constant",
                        ON_VOLTAGE,
                        "ms",
                        Dimension.TIME,
                        OF,
                        List.of(),
                        List.of(),
                        x -> lag(x).tauSecond(),
                        bench.ratios())
                .told(ShaftResponse::tau);
    }

    static Question corner(MotorBench bench) {
        return new Question(
                        "frequency at which the speed has fallen to 0.707",
                        ON_VOLTAGE,
                        "Hz",
                        Dimension.FREQUENCY,
                        OF,
                        List.of(),
                        List.of(),
                        x -> hertz(lag(x).tauSecond()),
                        bench.ratios())
                .told(test -> tau(test).map(t -> new Quantity(hertz(t.si()), Dimension.FREQUENCY)));
    }

    static double hertz(double tauSecond) {
        return 1 / (2 * Math.PI * tauSecond);
    }

    /** The time constant is that of the shaft only where a voltage was put in and a speed came out. */
    private static Optional<Quantity> tau(TestResult test) {
        return Told.value(ResponseParameter.GAIN, Dimension.SPEED_CONSTANT)
                .in(test)
                .flatMap(gain -> Told.found(test, ResponseParameter.TIME_CONSTANT))
                .map(Known::value);
    }

    /** Of a loop whose command and output are of one kind. */
    static Expectation loop(Optional<TestResult> one) {
        Outcome<Window> window = AxisBench.between(
                1 - ENDS_WITHIN, 1, 1 + ENDS_WITHIN, Dimension.NUMBER, "a loop that holds its command");
        return Expectation.held(
                "output over command once settled",
                Phrase.of("command of a loop in, what it controls out"),
                "",
                one,
                window,
                one.flatMap(t ->
                        Told.value(ResponseParameter.GAIN, Dimension.NUMBER).in(t)));
    }
}
