package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.known.Phrase;
import servowright.engine.power.BridgeSigns;
import servowright.engine.power.BridgeSigns.Suspect;
import servowright.engine.quantity.Quantity;

/** The signs that phase currents take, and the switch that would explain them, in words. */
final class BridgeWords {
    private BridgeWords() {}

    /** How often each current stands above and below the band. */
    static List<Phrase> of(BridgeSigns signs, double band, List<Integer> measured) {
        List<Phrase> details = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            String name = name(k) + (measured.contains(k) ? "" : ", computed from the two others,");
            details.add(Phrase.of("current " + name
                            + " is above {band} in {above} and below −{band} in {below} of the samples")
                    .with("band", Quantity.of(band, "A"), "A")
                    .with("above", Quantity.number(signs.above()[k]), "%")
                    .with("below", Quantity.number(signs.below()[k]), "%"));
        }
        return details;
    }

    /**
     * What is wrong, where something is.
     *
     * @param large the same with small currents counted as none: one of them may be no more than an offset of its sensor
     */
    static Optional<String> verdict(BridgeSigns signs, BridgeSigns large) {
        if (signs.healthy()) {
            return Optional.empty();
        }
        List<String> seen = new ArrayList<>();
        for (int k = 0; k < 3; k++) {
            int only = signs.only(k);
            if (only != 0) {
                seen.add(name(k) + " is never " + (only > 0 ? "negative" : "positive"));
            }
        }
        String suspects = signs.suspects().stream().map(BridgeWords::words).collect(Collectors.joining(", or "));
        String others = large.suspects().stream()
                .filter(s -> !signs.suspects().contains(s))
                .map(BridgeWords::words)
                .collect(Collectors.joining(", or "));
        if (seen.isEmpty()) {
            return Optional.of("not every phase takes both signs, and none is one-sided: the motor hardly turns");
        }
        return Optional.of(String.join(", ", seen)
                + (suspects.isEmpty() ? ": no single switch explains it" : ": " + suspects)
                + (others.isEmpty() ? "" : "; or, if a small current is only an offset, " + others));
    }

    private static String words(Suspect suspect) {
        return (suspect.upper() ? "upper" : "lower") + " switch of leg " + name(suspect.leg())
                + (suspect.shorted() ? " shorted" : " stays open");
    }

    private static char name(int phase) {
        return (char) ('A' + phase);
    }
}
