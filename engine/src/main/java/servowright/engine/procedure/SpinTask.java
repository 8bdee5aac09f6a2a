package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Declared;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.MagnetMaterial;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.VoltageBasis;

/** Driven by another machine with the terminals open. */
final class SpinTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.SPIN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                                "Drive disconnected, terminals open. Motor held, shaft in a drill: {speed} and two other speeds,"
                                        + " both ways, each held for a second; speed by a tachometer on a mark.")
                        .with("speed", bench.drillSpeed(), "rpm"),
                Phrase.of("Oscilloscope between A and B, then B to C and C to A; note the temperature of the motor."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                Phrase.of("A turning shaft takes hold of sleeves, gloves and hair: guard it."),
                Phrase.of(
                        "Open terminals of a turning motor are live: touch none; local codes say from which voltage on"
                                + " that is work for the licensed."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known speed = bench.drillSpeed();
        List<Question> all = new ArrayList<>();
        all.add(voltage(bench, speed));
        all.add(new Question(
                "electrical frequency",
                Phrase.of("at {n}").with("n", speed, "rpm"),
                "Hz",
                Dimension.FREQUENCY,
                List.of(MotorParameter.POLE_PAIRS),
                List.of(speed),
                Question.limits(bench.instruments(), Reads.TIME),
                x -> ElectricalSpeed.hertz(x[1], (int) Math.round(x[0])),
                bench.ratios()));
        return all;
    }

    private static Question voltage(MotorBench bench, Known speed) {
        Known magnets = bench.temperature(TestFigure.MAGNETS_AT);
        Phrase at = Phrase.of("at {n}, magnets at {t}").with("n", speed, "rpm").with("t", magnets, "degC");
        double perKelvin = bench.motor()
                .magnetMaterial()
                .map(m -> MagnetMaterial.valueOf(m.name()))
                .orElse(MagnetMaterial.NEODYMIUM)
                .perKelvin();
        Optional<Declared> label = labelAlone(bench);
        List<Sought> from =
                label.isPresent() ? List.of() : List.of(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS);
        List<Known> conditions =
                label.map(l -> List.of(speed, magnets, l.known())).orElse(List.of(speed, magnets));
        VoltageBasis basis = label.flatMap(l -> l.stated().voltageBasis()).orElse(VoltageBasis.LINE_PEAK);
        int first = from.size();
        return new Question(
                "peak voltage between two terminals",
                at,
                "V",
                Dimension.VOLTAGE,
                from,
                conditions,
                Question.limits(bench.instruments(), Reads.SCOPE_VOLTAGE),
                x -> constants(x, first, basis).emfConstant(VoltageBasis.LINE_PEAK)
                        * x[first]
                        * (1 + perKelvin * (x[first + 1] - MotorBench.roomKelvin())),
                bench.ratios());
    }

    private static MotorConstants constants(double[] x, int first, VoltageBasis basis) {
        return first > 0
                ? MotorConstants.ofFluxLinkage(x[0], (int) Math.round(x[1]))
                : MotorConstants.ofSpeedConstant(x[first + 2], basis);
    }

    /** A speed constant needs no pole pairs to say which voltage comes; flux linkage does. */
    private static Optional<Declared> labelAlone(MotorBench bench) {
        boolean known = bench.identified().best(MotorParameter.FLUX_LINKAGE) instanceof Outcome.Answer;
        return known ? Optional.empty() : bench.motor().figures().get(MotorFigure.SPEED_CONSTANT);
    }
}
