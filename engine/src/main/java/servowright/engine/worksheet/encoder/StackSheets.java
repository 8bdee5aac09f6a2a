package servowright.engine.worksheet.encoder;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.encoder.GapStack;
import servowright.engine.encoder.StackPart;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;

/** The parts that leave the gap, and how far they let it depart. */
final class StackSheets {
    private static final String SUM = "sum of the lengths, towards the sensor positive";
    private static final String STATISTICS = "statistics of independent sums";
    private static final double SHARE = 0.9973;
    private static final int TRIALS = 20_000;

    /** A part by its symbol, name and meaning; it widens the gap or narrows it. */
    private record Part(String symbol, String name, String meaning, int direction, String example) {
        String tolerance() {
            return name + "_tolerance";
        }
    }

    private static final List<Part> PARTS = List.of(
            new Part("so", "standoff", "length of the standoffs", 1, "8 mm"),
            new Part("sh", "shims", "all shims under one screw", 1, "0.5 mm"),
            new Part("de", "depth", "element below the surface of its package", 1, "0.35 mm"),
            new Part("pa", "package", "package above the face of the board, solder included", -1, "1.1 mm"),
            new Part("sf", "shaft_end", "shaft end above the face the standoffs stand on", -1, "2 mm"),
            new Part("ca", "carrier", "carrier between shaft end and magnet", -1, "1 mm"),
            new Part("gl", "glue", "glue under the magnet", -1, "0.1 mm"),
            new Part("ma", "magnet", "length of the magnet along the shaft", -1, "2.5 mm"),
            new Part("pl", "plating", "plating of the magnet on the face", -1, "0.015 mm"));

    private static final Worksheet SHEET = LineSheet.of(
            "gap-stack",
            "Stack of parts that leaves the gap",
            "Gap from the face of the magnet to the sensing element as the sum of its parts, and how far it departs: all"
                    + " tolerances the same way, root sum of squares, and drawn with every part anywhere within its"
                    + " tolerance. A part not given has no length and no tolerance.",
            inputs(),
            List.of(
                    new Result("gap", "gap to the sensing element", "mm"),
                    new Result("worst", "departure, all tolerances the same way", "mm"),
                    new Result("root_sum", "departure, root sum of squares", "mm"),
                    new Result("deviation", "standard deviation, parts anywhere within their tolerance", "mm"),
                    new Result("drawn", "departure that 99.73 % of drawn assemblies keep", "mm")),
            List.of(
                    Line.of("gap", "{g} = " + signed(), SUM, x -> stack(x).nominalMetre(), lengths()),
                    Line.of("worst", "{w} = " + joined(" + "), SUM, x -> of(x).worstMetre(), tolerances()),
                    Line.of(
                            "root_sum",
                            "{r} = √Σt², t: " + joined(", "),
                            STATISTICS,
                            x -> of(x).rootSumOfSquaresMetre(),
                            tolerances()),
                    Line.of(
                            "deviation",
                            "{σ} = √(Σt²/3), t: " + joined(", "),
                            STATISTICS,
                            x -> of(x).standardDeviationMetre(),
                            tolerances()),
                    Line.of(
                            "drawn",
                            "{q} of " + TRIALS + " drawn from {seed}, t: " + joined(", "),
                            STATISTICS,
                            StackSheets::drawn,
                            Stream.concat(Stream.of(tolerances()), Stream.of("seed=seed"))
                                    .toArray(String[]::new))));

    private StackSheets() {}

    static List<Worksheet> all() {
        return List.of(SHEET);
    }

    private static List<Input> inputs() {
        List<Input> inputs = new ArrayList<>();
        for (Part part : PARTS) {
            inputs.add(EncoderInputs.length(part.name(), part.meaning(), part.example(), 0, 200)
                    .orElse("0 mm"));
        }
        for (Part part : PARTS) {
            inputs.add(
                    EncoderInputs.length(part.tolerance(), "tolerance, either way: " + part.meaning(), "0.05 mm", 0, 20)
                            .orElse("0 mm"));
        }
        inputs.add(Input.count("seed", "number that the drawing begins from", 1, 1_000_000, "1")
                .orElse("1"));
        return inputs;
    }

    private static String[] lengths() {
        return PARTS.stream().map(p -> p.symbol() + "=" + p.name()).toArray(String[]::new);
    }

    private static String[] tolerances() {
        return PARTS.stream().map(p -> "t" + p.symbol() + "=" + p.tolerance()).toArray(String[]::new);
    }

    private static String signed() {
        return PARTS.stream()
                .map(p -> (p.direction() > 0 ? "+ {" : "− {") + p.symbol() + "}")
                .collect(Collectors.joining(" "))
                .substring(2);
    }

    private static String joined(String between) {
        return PARTS.stream().map(p -> "{t" + p.symbol() + "}").collect(Collectors.joining(between));
    }

    private static GapStack stack(double[] lengths) {
        List<StackPart> parts = new ArrayList<>();
        for (int i = 0; i < PARTS.size(); i++) {
            Part part = PARTS.get(i);
            parts.add(new StackPart(part.name(), part.direction(), lengths[i], 0, StackPart.Scatter.EVEN));
        }
        return new GapStack(parts);
    }

    /** A stack of which only the tolerances matter. */
    private static GapStack of(double[] tolerances) {
        List<StackPart> parts = new ArrayList<>();
        for (int i = 0; i < PARTS.size(); i++) {
            parts.add(StackPart.widens(PARTS.get(i).name(), 0, Math.max(0, tolerances[i])));
        }
        return new GapStack(parts);
    }

    private static double drawn(double[] x) {
        Random random = new Random(EncoderInputs.whole(x[PARTS.size()]));
        return of(x).worstMetre() == 0 ? 0 : of(x).departureMetre(SHARE, TRIALS, random);
    }
}
