package servowright.engine.worksheet.encoder;

import java.util.List;
import servowright.engine.encoder.GearedAngle;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** Where an output stands when power comes back, from a sensor of one turn and the ends of its travel. */
final class StartAngleSheet implements Worksheet {
    private static final String TURNS = "whole turns added until the angle lies within the travel (derived)";

    private static final Declaration DECLARATION = new Declaration(
            "start-angle",
            "Angle of an output when power comes",
            "A sensor of one turn on an output that travels less than a turn knows its place at once: the reading, with whole"
                    + " turns added, fits the travel at one angle. Where it fits at none, sensor, zero or stop has moved.",
            List.of(
                    angle("reading", "what the sensor reads", "-150 deg"),
                    angle("lowest", "lower end of the travel", "-10 deg"),
                    angle("highest", "upper end of the travel", "230 deg")),
            List.of(
                    new Result("places", "angles within the travel that read so", ""),
                    new Result("angle", "the one angle", "deg"),
                    new Result("verdict", "whether the drive may be enabled", "")),
            List.of(TURNS));

    private static Input angle(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.ANGLE, meaning, example)
                .within(Quantity.of(-1e6, "deg"), Quantity.of(1e6, "deg"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        boolean turned = inputs.known("lowest")
                .flatMap(low -> inputs.known("highest").map(high -> low.si() > high.si()))
                .orElse(false);
        return new Contradictions(DECLARATION)
                .when(turned, "lowest", "the lower end lies above the upper one", "Exchange them.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs("reading", "lowest", "highest")
                .work(StartAngleSheet::fill);
    }

    private static void fill(Calculation c) {
        Term[] terms = {c.given("r", "reading"), c.given("a", "lowest"), c.given("b", "highest")};
        String within = "{r} + k · 360° from {a} to {b}";
        Term places = c.result(
                "places", "{n} = number of " + within, TURNS, x -> angles(x).size(), terms);
        int found = (int) Math.rint(places.value().si());
        if (found == 1) {
            c.result("angle", "{θ} = " + within, TURNS, x -> angles(x).get(0), terms);
        }
        c.word(
                "verdict",
                found == 1 ? "knows its place" : found == 0 ? "refuse: outside its travel" : "refuse: ambiguous");
    }

    private static List<Double> angles(double[] x) {
        return GearedAngle.anglesWithin(x[0], x[1], Math.max(x[1], x[2]));
    }
}
