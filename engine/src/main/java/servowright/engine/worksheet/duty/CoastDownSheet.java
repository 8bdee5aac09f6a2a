package servowright.engine.worksheet.duty;

import java.util.Arrays;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.motion.CoastDown;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** A shaft that runs out by its own drag. */
public final class CoastDownSheet implements Worksheet {
    private static final String RICCATI = "J dω/dt = −(Tc + b ω + k ω²), solved in closed form (derived)";
    private static final String ADDED = "two run-outs over the same speeds, J = J added · t1/(t2 − t1)";

    private static final Dimension SQUARED = Dimension.TORQUE.over(Dimension.SPEED.power(2));

    private static final Declaration DECLARATION = new Declaration(
            "coast-down",
            "Run-out of a shaft",
            "Time to standstill and speed after a time of a shaft that runs out by its own drag, or the inertia from two"
                    + " run-outs with and without a known inertia added. With the magnets in place friction and iron loss"
                    + " cannot be told apart: the sum is drag.",
            List.of(
                    UsualInputs.inertia("inertia", "inertia of all that turns", "4 kg cm2"),
                    Input.quantity("coulomb", Dimension.TORQUE, "drag that does not depend on speed", "10 mN m")
                            .within(Quantity.of(0, "N m"), Quantity.of(1e5, "N m"))
                            .orElse("0 N m"),
                    Input.quantity("viscous", Dimension.VISCOUS_FRICTION, "drag per speed", "20 uN m s")
                            .within(Quantity.of(0, "N m s"), Quantity.of(1e5, "N m s"))
                            .orElse("0 N m s"),
                    Input.quantity("quadratic", SQUARED, "drag per speed squared", "10 nN m s2/rad2")
                            .within(Quantity.of(0, "N m s2/rad2"), Quantity.of(1e3, "N m s2/rad2"))
                            .orElse("0 N m s2/rad2"),
                    UsualInputs.speed("from", "speed at the start"),
                    Input.quantity("after", Dimension.TIME, "time of the run-out", "10 s")
                            .within(Quantity.of(0, "s"), Quantity.of(1e7, "s")),
                    UsualInputs.inertia("added_inertia", "known inertia added for a second run-out", "50 kg mm2"),
                    UsualInputs.time("time_without", "time of the run-out without it", "6 s"),
                    UsualInputs.time("time_with", "time of the run-out with it", "9 s")),
            List.of(
                    new Result("stop_time", "time to standstill", "s"),
                    new Result("speed_after", "speed after the time", "rad/s"),
                    new Result("loss_at_start", "power lost to drag at the start", "W"),
                    new Result("inertia_found", "inertia without the one added", "kg m2")),
            List.of(RICCATI, ADDED));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        double without = inputs.known("time_without").map(Known::si).orElse(0.0);
        return new Contradictions(DECLARATION)
                .when(
                        inputs.known("time_with").filter(t -> t.si() <= without).isPresent(),
                        "time_with",
                        "the run-out with more inertia is not the longer one",
                        "Check which is which.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        boolean added = inputs.has("added_inertia") && inputs.has("time_without") && inputs.has("time_with");
        boolean run = inputs.has("inertia") && inputs.has("from");
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        added || run,
                        "inertia and speed at the start, or two run-outs with an inertia added",
                        "give inertia, coulomb and from")
                .work(c -> {
                    if (run) {
                        runOut(c);
                    }
                    if (added) {
                        c.result(
                                "inertia_found",
                                "{J} = {J added} · {t1} / ({t2} − {t1})",
                                ADDED,
                                x -> CoastDown.inertiaKgM2(x[0], x[1], x[2]),
                                c.given("J added", "added_inertia"),
                                c.given("t1", "time_without"),
                                c.given("t2", "time_with"));
                    }
                });
    }

    private static void runOut(Calculation c) {
        Term[] terms = {
            c.given("J", "inertia"),
            c.given("Tc", "coulomb"),
            c.given("b", "viscous"),
            c.given("ω0", "from"),
            c.given("k", "quadratic")
        };
        boolean windy = terms[4].value().si() > 0;
        if (drag(terms).stopSecond(terms[3].value().si()).isPresent()) {
            c.result(
                    "stop_time",
                    windy ? "J dω/dt = −({Tc} + {b} ω + {k} ω²)" : "{t} = {J}/{b} · ln(1 + {b} · {ω0} / {Tc})",
                    RICCATI,
                    x -> drag(x).stopSecond(x[3]).orElse(0),
                    terms);
        } else {
            c.remark(Phrase.of("nothing but drag that grows with speed: it never quite stops"));
        }
        c.result(
                "loss_at_start",
                windy ? "{P} = ({Tc} + {b} · {ω0} + {k} · {ω0}²) · {ω0}" : "{P} = ({Tc} + {b} · {ω0}) · {ω0}",
                RICCATI,
                x -> drag(x).lossWatt(x[3]),
                terms);
        c.term("t after", "after")
                .ifPresent(time -> c.result(
                        "speed_after",
                        windy
                                ? "J dω/dt = −({Tc} + {b} ω + {k} ω²), after {t after}"
                                : "{ω} = ({ω0} + {Tc}/{b}) · exp(−{b} · {t after}/{J}) − {Tc}/{b}",
                        RICCATI,
                        x -> drag(x).radPerS(x[3], x[5]),
                        terms[0],
                        terms[1],
                        terms[2],
                        terms[3],
                        terms[4],
                        time));
    }

    private static CoastDown drag(double[] x) {
        return new CoastDown(x[0], x[1], x[2], x[4]);
    }

    private static CoastDown drag(Term[] terms) {
        return drag(Arrays.stream(terms).mapToDouble(t -> t.value().si()).toArray());
    }
}
