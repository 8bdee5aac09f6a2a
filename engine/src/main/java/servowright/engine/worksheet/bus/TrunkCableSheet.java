package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.TrunkCable;
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

/** How long the trunk and its stubs may be. */
public final class TrunkCableSheet implements Worksheet {
    private static final String LEVEL =
            "level at the far end, ISO 11898-2 / CiA 303-1 as reprinted in public manuals (seen);"
                    + " their table keeps a third of the difference as margin (computed)";
    private static final String STUB =
            "a third of the length at which the echo comes back within the edge, glossary of a"
                    + " space standard (seen)";

    private static final Declaration DECLARATION = new Declaration(
            "trunk-cable",
            "Length of trunk and stubs",
            "Longest trunk for the level at its far end, by the resistance of its wire, and longest stub for the edges. The"
                    + " bit timing sets another limit: see bit-timing.",
            inputs(),
            List.of(
                    new Result("most_wire", "largest resistance of one wire", "ohm"),
                    new Result("longest_trunk", "longest trunk for the level", "m"),
                    new Result("longest_stub", "longest stub for the edges", "m")),
            List.of(LEVEL, STUB));

    private static List<Input> inputs() {
        Dimension perMetre = Dimension.RESISTANCE.over(Dimension.LENGTH);
        return List.of(
                Input.count("nodes", "nodes on the trunk", 2, 1000, "32"),
                volt("out", "least level of a sender", "1.5 V").orElse("1.5 V"),
                volt("threshold", "level a receiver needs", "1 V").orElse("1 V"),
                Input.quantity("margin", Dimension.NUMBER, "share of their difference kept", "33.3 %")
                        .within(Quantity.number(0), Quantity.number(1))
                        .orElse("33.333333 %"),
                Input.quantity("terminator", Dimension.RESISTANCE, "resistance of the far terminator", "118 ohm")
                        .within(Quantity.of(10, "ohm"), Quantity.of(10, "kohm"))
                        .orElse("118 ohm"),
                Input.quantity("node", Dimension.RESISTANCE, "differential input resistance of a node", "20 kohm")
                        .within(Quantity.of(100, "ohm"), Quantity.of(10, "Mohm"))
                        .orElse("20 kohm"),
                Input.quantity("wire", perMetre, "resistance of one wire per length", "70 mohm/m")
                        .within(Quantity.of(0.1, "mohm/m"), Quantity.of(10, "ohm/m")),
                Input.quantity("edge", Dimension.TIME, "time of an edge", "50 ns")
                        .within(Quantity.of(0.1, "ns"), Quantity.of(100, "us")),
                Input.quantity(
                                "there_and_back",
                                Dimension.TIME.over(Dimension.LENGTH),
                                "delay of a stub there and back",
                                "10 ns/m")
                        .within(Quantity.of(6, "ns/m"), Quantity.of(40, "ns/m"))
                        .orElse("10 ns/m"));
    }

    private static Input volt(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.VOLTAGE, meaning, example)
                .within(Quantity.of(0.1, "V"), Quantity.of(10, "V"));
    }

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        boolean below = in.known("out")
                .flatMap(out -> in.known("threshold").map(th -> out.si() <= th.si()))
                .orElse(false);
        return new Contradictions(DECLARATION)
                .when(below, "out", "the sender's level does not reach what a receiver needs", "")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs)
                .needs(
                        inputs.has("nodes") || inputs.has("edge"),
                        "the nodes on the trunk, or the time of an edge",
                        "give nodes, for example 32")
                .work(TrunkCableSheet::fill);
    }

    private static void fill(Calculation c) {
        if (c.inputs().has("nodes")) {
            Term wire = c.result(
                    "most_wire",
                    "{Rw} = ({V out} / V req − 1) / (2 (1/{RT} + ({n} − 1)/{R node})), V req = {V th} + {k} ({V out} − {V th})",
                    LEVEL,
                    x -> TrunkCable.mostWireOhm(x[0], x[1], x[2], x[3], (int) Math.rint(x[4]), x[5]),
                    c.given("V out", "out"),
                    c.given("V th", "threshold"),
                    c.given("k", "margin"),
                    c.given("RT", "terminator"),
                    c.given("n", "nodes"),
                    c.given("R node", "node"));
            c.term("r", "wire")
                    .ifPresent(r -> c.result("longest_trunk", "{L} = {Rw} / {r}", LEVEL, x -> x[0] / x[1], wire, r));
        }
        c.term("t edge", "edge")
                .ifPresent(edge -> c.result(
                        "longest_stub",
                        "{l} = {t edge} / (3 · {t'})",
                        STUB,
                        x -> TrunkCable.longestStubMetre(x[0] * 1e9, x[1] * 1e9),
                        edge,
                        c.given("t'", "there_and_back")));
    }
}
