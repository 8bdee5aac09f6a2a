package servowright.engine.worksheet.motor;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Term;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingResistance;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** Winding temperature from the rise of its resistance. */
public final class ResistanceRiseSheet implements Worksheet {
    private static final String METHOD =
            "t2 = (R2/R1)(k + t1) − k, rise t2 − ta: resistance method of IEC 60034-1 (seen as quoted in a manual's appendix)";

    private static final Declaration DECLARATION = new Declaration(
            "resistance-rise",
            "Winding temperature by resistance",
            "From the resistance cold and right after a run, through the same terminals. It is a mean over the winding: the"
                    + " hottest spot is above it. Take several readings after stopping and reach back to the stop.",
            List.of(
                    UsualInputs.ohm("cold", "resistance before the run", "200 mohm"),
                    UsualInputs.ohm("hot", "resistance right after the run", "210 mohm"),
                    UsualInputs.temperature("cold_at", "winding temperature before the run", "20 degC"),
                    UsualInputs.temperature("surroundings", "coolant or room temperature at the end", "25 degC"),
                    Conductors.conductor()),
            List.of(
                    new Result("winding", "mean winding temperature", "degC"),
                    new Result("rise", "above the surroundings", "K")),
            List.of(METHOD));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("cold", "hot", "cold_at", "surroundings")
                .work(ResistanceRiseSheet::fill);
    }

    private static void fill(Calculation c) {
        Conductor conductor = Conductors.conductor(c.inputs());
        String k = String.valueOf(conductor.kCelsius());
        Term[] terms = {
            c.given("R1", "cold"), c.given("t1", "cold_at"), c.given("R2", "hot"), c.given("ta", "surroundings")
        };
        c.result(
                "winding",
                "{t2} = {R2}/{R1} · (" + k + " + {t1}) − " + k + ", in °C",
                METHOD,
                x -> WindingResistance.temperature(x[0], x[1], x[2], x[3], conductor)
                        .windingKelvin(),
                terms);
        c.result(
                "rise",
                "{rise} = {R2}/{R1} · (" + k + " + {t1}) − " + k + " − {ta}",
                METHOD,
                x -> WindingResistance.temperature(x[0], x[1], x[2], x[3], conductor)
                        .riseKelvin(),
                terms);
    }
}
