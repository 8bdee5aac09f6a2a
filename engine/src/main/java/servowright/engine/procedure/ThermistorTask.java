package servowright.engine.procedure;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.bench.ThermistorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.Declared;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;
import servowright.engine.thermal.Thermistor;

/** The sensor in the winding beside a thermometer, in water. */
final class ThermistorTask implements MotorTask {
    /** Limits of what a label says without them (common practice, no source). */
    private static final double OHM_HALF_WIDTH = 0.05;

    private static final double BETA_HALF_WIDTH = 0.02;

    /** Ice in water, the air of a room, and what a hand does not bear, degC. */
    private static final double[] WATER = {0, 25, 60};

    /** A thermometer in stirred water (common practice, no source). */
    private static final double THERMOMETER_KELVIN = 0.5;

    @Override
    public TestKind kind() {
        return TestKind.THERMISTOR_CHECK;
    }

    @Override
    public List<Sought> settles() {
        return List.of(ThermistorParameter.RESISTANCE_AT_25, ThermistorParameter.BETA);
    }

    @Override
    public boolean suits(MotorBench bench) {
        return bench.motor().figures().get(MotorFigure.THERMISTOR_RESISTANCE).isPresent()
                || bench.motor().figures().get(MotorFigure.THERMISTOR_BETA).isPresent();
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                        "Drive and supply disconnected, the sensor's two wires on an ohmmeter. Motor in a tight bag under"
                                + " stirred water, a thermometer at the winding: melting ice, the room's, 40 °C, 60 °C."),
                Phrase.of("Each until the ohmmeter stands still for five minutes; then read both."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                Phrase.of("Water and supply kill: nothing but the ohmmeter is connected until the motor is dry."),
                Phrase.of("Water of 60 °C scalds in seconds."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Optional<Known> ohm =
                constant(bench, TestFigure.RESISTANCE_AT_25, MotorFigure.THERMISTOR_RESISTANCE, OHM_HALF_WIDTH);
        Optional<Known> beta = constant(bench, TestFigure.BETA, MotorFigure.THERMISTOR_BETA, BETA_HALF_WIDTH);
        return ohm.isEmpty() || beta.isEmpty()
                ? List.of()
                : Arrays.stream(WATER)
                        .mapToObj(celsius -> at(bench, celsius, ohm.get(), beta.get()))
                        .toList();
    }

    private static Question at(MotorBench bench, double celsius, Known ohm, Known beta) {
        Known water = MotorBench.condition(Quantity.of(celsius, "degC"))
                .withPart(Source.of("thermometer"), THERMOMETER_KELVIN / Math.sqrt(3));
        return new Question(
                        "resistance of the sensor",
                        Phrase.of("in water of {t}").with("t", water, "degC"),
                        "kohm",
                        Dimension.RESISTANCE,
                        List.of(),
                        List.of(ohm, beta, water),
                        Question.limits(bench.instruments(), Reads.METER_RESISTANCE),
                        x -> ohm(x[0], x[1], x[2]),
                        List.of())
                .told(test -> found(test, water.si()));
    }

    private static double ohm(double at25, double beta, double kelvin) {
        return Thermistor.exponential(at25, beta).ohm(kelvin).orElse(Double.NaN);
    }

    /** What the curve of the calibration reads there. */
    private static Optional<Quantity> found(TestResult test, double kelvin) {
        return Told.found(test, ThermistorParameter.RESISTANCE_AT_25)
                .flatMap(r -> Told.found(test, ThermistorParameter.BETA).map(b -> ohm(r.si(), b.si(), kelvin)))
                .map(ohm -> new Quantity(ohm, Dimension.RESISTANCE));
    }

    /** As stated with the test, else with the motor; a bare figure within the limits that are usual. */
    private static Optional<Known> constant(MotorBench bench, TestFigure own, MotorFigure of, double halfWidth) {
        Optional<Declared> stated = bench.test().flatMap(t -> t.figures().get(own));
        return stated.or(() -> bench.motor().figures().get(of)).map(d -> {
            boolean bare = d.stated().spread() == Stated.Spread.VALUE;
            Source limits = Source.of(d.place().text() + " " + d.place().path() + " tolerance");
            return bare ? d.known().withPart(limits, halfWidth * d.si() / Math.sqrt(3)) : d.known();
        });
    }
}
