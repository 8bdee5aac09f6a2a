package servowright.engine.findings;

import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.quantity.Quantity;

/**
 * What would narrow a parameter: the test that was not made yet, or, when it was, what weighs most in its uncertainty. A
 * test that was made well is not asked for again.
 */
final class NarrowingAdvice {
    /** Limits of an instrument, as its readings carry them: {@code oscilloscope with probe ± 0.02 gain}. */
    private static final Pattern INSTRUMENT = Pattern.compile("(.+?) ± ([0-9.]+(?:E-?\\d+)?)(?: ± \\S+)? (gain|zero)");

    /** A declared figure of a test: {@code bench.yaml:54 tests / 7 / added_inertia}. */
    private static final Pattern DECLARED = Pattern.compile("(\\S+:\\d+) .* / (\\w+)");

    private NarrowingAdvice() {}

    static Phrase of(MotorParameter what, Known best) {
        if (best.origin() != Origin.MEASURED) {
            return Phrase.of(what.settle());
        }
        Map<String, Double> groups = new HashMap<>();
        Map<String, Source> names = new HashMap<>();
        best.parts().forEach((source, c) -> {
            groups.merge(source.group(), c * c, Double::sum);
            names.putIfAbsent(source.group(), source);
        });
        double all = groups.values().stream().mapToDouble(Double::doubleValue).sum();
        return groups.entrySet().stream()
                .max(Map.Entry.<String, Double>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .flatMap(e -> Optional.ofNullable(names.get(e.getKey()))
                        .map(source -> of(source)
                                .with("share", Quantity.number(Math.round(100 * e.getValue() / all) / 100.0), "%")))
                .orElseGet(() -> Phrase.of(what.settle()));
    }

    private static Phrase of(Source source) {
        Matcher instrument = INSTRUMENT.matcher(source.id());
        if (instrument.matches()) {
            return Phrase.of("closer limits for the {what}: its ± {limit} make {share} of it")
                    .with("what", instrument.group(1))
                    .with("limit", Quantity.number(Double.parseDouble(instrument.group(2))), "%");
        }
        Matcher declared = DECLARED.matcher(source.id());
        if (declared.matches()) {
            return Phrase.of("closer limits for the {what} in {place}: they make {share} of it")
                    .with("what", declared.group(2).replace('_', ' '))
                    .with("place", declared.group(1));
        }
        if (source.id().startsWith("disagreement of the tests")) {
            return Phrase.of("find out why its tests disagree: that makes {share} of it");
        }
        if (source.id().endsWith(" thermometer")) {
            return Phrase.of("the temperature read more closely in {what}: it makes {share} of it")
                    .with("what", source.id().replace(" thermometer", ""));
        }
        return Phrase.of("more or longer readings: {what} makes {share} of it").with("what", source.group());
    }
}
