package servowright.engine.bench;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Spread;

/** Signals that stand at one of their extremes for long: they rest there, or they are cut off, and only a person can tell. */
final class AtLimit {
    private static final double OFTEN = 0.04;

    private AtLimit() {}

    /** What to say of it, if it is so. */
    static Optional<Phrase> remark(String name, double... values) {
        Spread spread = Spread.of(values);
        double share = Math.max(share(spread.most(), values), share(spread.least(), values));
        return share < OFTEN ? Optional.empty() : Optional.of(words(name, share));
    }

    static Phrase words(String name, double share) {
        return Phrase.of(name
                        + " stands at its largest or its least value in {share} of the samples: if it is cut off there,"
                        + " the result is wrong")
                .with("share", Quantity.number(share), "%");
    }

    private static double share(double level, double... values) {
        return Arrays.stream(values).filter(v -> v == level).count() / (double) values.length;
    }
}
