package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.encoder.Alignment;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** The rotor pulled to a standing field at several electrical angles, from both sides. */
final class AlignmentTask implements AxisTask {
    @Override
    public TestKind kind() {
        return TestKind.ALIGNMENT;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.COMMUTATION_OFFSET, AxisParameter.FRICTION_LAG);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.onAxisMagnet() || bench.sensor().words().contains("incremental");
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        Phrase field = bench.plannedField()
                .map(i -> Phrase.of(
                                "No load on the shaft. A standing field of {i}, phase peak, turned in steps of 60 electrical"
                                        + " degrees over a mechanical turn, forwards and then back; the reading at each stop.")
                        .with("i", i, "A"))
                .orElseGet(() -> Phrase.of(
                        "No load on the shaft. A standing field, turned in steps of 60 electrical degrees over a"
                                + " mechanical turn, forwards and then back; the reading at each stop."));
        return List.of(field);
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                Phrase.of("A rotor jumps when the field comes, up to half an electrical turn: hands off, load off."),
                Phrase.of("A standing field heats one phase most: seconds at a time."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(
                bench.bounded(
                        "pole pairs, electrical over mechanical travel",
                        Phrase.of("over a whole turn"),
                        "",
                        MotorParameter.POLE_PAIRS,
                        pairs(bench)),
                lag(bench));
    }

    private static Outcome<Window> pairs(AxisBench bench) {
        return bench.motor(MotorParameter.POLE_PAIRS)
                .fold(
                        a -> AxisBench.between(
                                a.value().si(),
                                a.value().si(),
                                a.value().si(),
                                Dimension.NUMBER,
                                a.value().from()),
                        m -> m.forAnother());
    }

    /** From the rotor's own drag to that with the friction of the load as declared; other currents hold it otherwise. */
    static Expectation lag(AxisBench bench) {
        Optional<Known> current = bench.fieldCurrent();
        String assumed =
                bench.made().isEmpty() || bench.statedField().isPresent() ? "" : ", which the test does not state";
        Phrase at = current.map(i -> Phrase.of("at {i} in the field" + assumed).with("i", i, "A"))
                .orElse(Phrase.of(""));
        Outcome<Window> window = current.map(i -> lag(bench, i))
                .orElseGet(() -> Outcome.missing(
                        "the continuous current of the drive of " + bench.name(), "state it in machine.yaml"));
        return bench.bounded("electrical angle held back by friction", at, "deg", AxisParameter.FRICTION_LAG, window);
    }

    private static Outcome<Window> lag(AxisBench bench, Known current) {
        Outcome<Known> flux = bench.motor(MotorParameter.FLUX_LINKAGE);
        Outcome<Known> pairs = bench.motor(MotorParameter.POLE_PAIRS);
        if (flux.found().isEmpty()) {
            return flux.fold(a -> Outcome.missing("", ""), m -> m.forAnother());
        }
        if (pairs.found().isEmpty()) {
            return pairs.fold(a -> Outcome.missing("", ""), m -> m.forAnother());
        }
        double holding = MotorConstants.ofFluxLinkage(flux.found().get().si(), (int)
                                Math.round(pairs.found().get().si()))
                        .torqueConstant(CurrentBasis.Q_AXIS)
                * current.si();
        double drag =
                bench.motor(MotorParameter.DRY_DRAG).found().map(Known::si).orElse(0.0);
        double turns = bench.own(AxisFigure.MOTOR_TURNS).map(Known::si).orElse(1.0);
        double load = bench.own(AxisFigure.LOAD_FRICTION).map(Known::si).orElse(0.0) / turns;
        double least = Alignment.frictionBoundElectricalRad(Math.min(1, drag / holding));
        double most = Alignment.frictionBoundElectricalRad(Math.min(1, (drag + load) / holding));
        return AxisBench.between(
                least, (least + most) / 2, most, Dimension.ANGLE, "drag of the rotor alone to that of the load");
    }
}
