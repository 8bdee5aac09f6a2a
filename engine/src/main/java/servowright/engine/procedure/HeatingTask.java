package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingResistance;
import servowright.engine.power.CopperLoss;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.thermal.CopperHeat;

/** Loaded until warm, then the winding read while it cools. */
final class HeatingTask implements MotorTask {
    /** Direct current through two terminals that heats like half the rated current: 2 R I² = (3/2) R i² / 2. */
    private static final double HALF_HEAT = Math.sqrt(0.375);

    @Override
    public TestKind kind() {
        return TestKind.HEATING;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.THERMAL_RESISTANCE);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                                "Mounted as in the machine, drive disconnected. Cold resistance between A and B first; then {i} direct"
                                        + " current through them until an hour changes nothing.")
                        .with("i", current(bench), "A"),
                Phrase.of(
                        "Switch off, read the resistance every 8 s for a minute, the first within 10 s; note the air."),
                Phrase.of(
                        "Better: log voltage and current every few seconds from cold, a thermometer on the housing too; that"
                                + " tells winding and housing apart."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        Phrase hot = Phrase.of("A heated winding burns skin and can set fire to what lies near: stay with it.");
        Optional<Known> limit = bench.motor().figures().known(MotorFigure.WINDING_LIMIT);
        return limit.map(l -> List.of(
                        hot,
                        Phrase.of("Insulation fails above its limit: stop at {t}.")
                                .with("t", l, "degC")))
                .orElse(List.of(
                        hot, Phrase.of("Insulation fails above its limit, which is not stated: ask for it first.")));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known current = current(bench);
        Known air = bench.temperature(TestFigure.AIR_AT);
        Phrase at =
                Phrase.of("settled at {i}, air at {t}").with("i", current, "A").with("t", air, "degC");
        List<Sought> from = List.of(MotorParameter.THERMAL_RESISTANCE, MotorParameter.PHASE_RESISTANCE);
        return List.of(
                new Question(
                        "winding temperature",
                        at,
                        "degC",
                        Dimension.TEMPERATURE,
                        from,
                        List.of(current, air),
                        List.of(),
                        HeatingTask::settledKelvin,
                        bench.ratios()),
                new Question(
                        "resistance between A and B right after",
                        at,
                        "",
                        Dimension.RESISTANCE,
                        from,
                        List.of(current, air),
                        Question.limits(bench.instruments(), Reads.METER_RESISTANCE),
                        x -> hotOhm(x[1], settledKelvin(x)),
                        bench.ratios()));
    }

    private static double settledKelvin(double... x) {
        CopperHeat heat = new CopperHeat(
                x[3], x[0], MotorBench.roomKelvin(), Conductor.COPPER_IACS.relativePerKelvin(MotorBench.roomKelvin()));
        return heat.settledKelvin(CopperLoss.sixStepWatt(x[2], x[1])).orElse(Double.NaN);
    }

    private static double hotOhm(double phaseOhm, double kelvin) {
        return Double.isNaN(kelvin)
                ? Double.NaN
                : WindingResistance.expectedReadingOhm(
                        WindingResistance.atTemperature(
                                phaseOhm, MotorBench.roomKelvin(), kelvin, Conductor.COPPER_IACS),
                        HookUp.TWO_TERMINALS,
                        0);
    }

    private static Known current(MotorBench bench) {
        return bench.stated(TestFigure.HEATING_CURRENT).orElseGet(() -> bench.current(HALF_HEAT));
    }
}
