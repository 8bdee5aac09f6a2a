package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;

/** What do all axes together take from the supply and give back to it? */
public final class SupplyTotalStudy {
    private SupplyTotalStudy() {}

    /** The sum over the axes. */
    public static Outcome<SupplyTotal> of(List<AxisPrediction> axes) {
        if (axes.stream().allMatch(a -> a.duties().isEmpty())) {
            return Outcome.missing("a duty of any axis", "say what the axes have to do: axes / .. / duties");
        }
        Inquiry in = new Inquiry();
        List<List<Supplier<Draw>>> drawsPerAxis = new ArrayList<>();
        List<List<Supplier<Returned>>> returnsPerAxis = new ArrayList<>();
        for (AxisPrediction axis : axes) {
            drawsPerAxis.add(axis.duties().stream().map(d -> in.take(d.draw())).toList());
            returnsPerAxis.add(
                    axis.duties().stream().map(d -> in.take(d.returned())).toList());
        }
        in.assume(Phrase.of("all axes at once, each with its heaviest duty"));
        return in.answer(() -> new SupplyTotal(
                sum(in, axes, "peak supply current of all axes", "Ipk", worst(drawsPerAxis, Draw::peakCurrent)),
                sum(in, axes, "mean supply current of all axes, at most", "Im", worst(drawsPerAxis, Draw::meanCurrent)),
                sum(in, axes, "current back from all axes, at most", "Ib", worst(returnsPerAxis, Returned::current))));
    }

    private static <T> List<Known> worst(List<List<Supplier<T>>> perAxis, Function<T, Known> figure) {
        return perAxis.stream()
                .filter(duties -> !duties.isEmpty())
                .map(duties -> duties.stream()
                        .map(d -> figure.apply(d.get()))
                        .max(Comparator.comparingDouble(Known::si))
                        .orElseThrow())
                .toList();
    }

    private static Known sum(Inquiry in, List<AxisPrediction> axes, String label, String symbol, List<Known> parts) {
        List<String> names = axes.stream()
                .filter(a -> !a.duties().isEmpty())
                .map(AxisPrediction::name)
                .toList();
        Term[] terms = new Term[parts.size()];
        StringBuilder formula = new StringBuilder("{" + symbol + "} =");
        for (int i = 0; i < terms.length; i++) {
            terms[i] = Term.of(names.get(i), parts.get(i), "A");
            formula.append(i == 0 ? " {" : " + {").append(names.get(i)).append('}');
        }
        return in.sheet()
                .line(
                        label,
                        formula.toString(),
                        "A",
                        Dimension.CURRENT,
                        "sum of currents at one node",
                        x -> {
                            double total = 0;
                            for (double part : x) {
                                total += part;
                            }
                            return total;
                        },
                        terms);
    }
}
