package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.Terminators;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What an ohmmeter shows between the two bus wires, and how many terminators a reading means. */
public final class BusTerminatorsSheet implements Worksheet {
    private static final String PARALLEL = "terminators and nodes in parallel";

    private static final Declaration DECLARATION = new Declaration(
            "bus-terminators",
            "Terminators by ohmmeter",
            "Resistance between the two wires with the power off, or the number of terminators that a reading means. Where"
                    + " they sit it cannot tell: both must be at the ends.",
            List.of(
                    Input.count("terminators", "terminators on the bus", 0, 50, "2"),
                    ohm("reading", "resistance read between the two wires, power off", "60 ohm"),
                    ohm("each", "resistance of one terminator", "120 ohm").orElse("120 ohm"),
                    Input.count("nodes", "nodes on the bus", 0, 500, "6").orElse("0"),
                    ohm("node", "differential input resistance of a node", "30 kohm")
                            .orElse("30 kohm")),
            List.of(
                    new Result("resistance", "what an ohmmeter shows", "ohm"),
                    new Result("terminators_found", "terminators that the reading means", ""),
                    new Result("resistance_then", "what that many would show", "ohm"),
                    new Result("verdict", "whether there are two", "")),
            List.of(PARALLEL));

    private static Input ohm(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.RESISTANCE, meaning, example)
                .within(Quantity.of(0.1, "ohm"), Quantity.of(10, "Mohm"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("terminators") || inputs.has("reading"),
                        "the number of terminators, or a reading",
                        "give reading, for example 60 ohm")
                .work(BusTerminatorsSheet::fill);
    }

    private static void fill(Calculation c) {
        int nodes = c.count("nodes");
        Term each = c.given("RT", "each");
        Term node = c.given("R node", "node");
        Term n = c.given("nodes", "nodes");
        c.term("k", "terminators").ifPresent(k -> {
            if (k.value().si() == 0 && nodes == 0) {
                c.remark(Phrase.of("nothing joins the wires: the meter shows no limit"));
            } else {
                c.result(
                        "resistance",
                        "{R} = 1 / ({k}/{RT} + {nodes}/{R node})",
                        PARALLEL,
                        x -> Terminators.readingOhm(x[1], (int) Math.rint(x[0]), (int) Math.rint(x[2]), x[3]),
                        k,
                        each,
                        n,
                        node);
            }
        });
        c.term("R", "reading").ifPresent(read -> {
            double ohm = each.value().si();
            int found = Terminators.countFor(
                    read.value().si(), ohm, nodes, node.value().si());
            Term k = c.result(
                    "terminators_found", "{k} = number whose resistance is nearest to {R}", PARALLEL, x -> found, read);
            if (found > 0 || nodes > 0) {
                c.result(
                        "resistance_then",
                        "{R then} = 1 / ({k}/{RT} + {nodes}/{R node})",
                        PARALLEL,
                        x -> Terminators.readingOhm(x[1], found, nodes, x[3]),
                        k,
                        each,
                        n,
                        node);
            }
            verdict(c, found, read.value());
        });
    }

    private static void verdict(Calculation c, int found, Known read) {
        if (read.si() < 10) {
            c.word("verdict", "the wires touch");
        } else if (found == 2) {
            c.word("verdict", "two, as it should be");
        } else {
            c.word("verdict", found < 2 ? "too few" : "too many");
        }
    }
}
