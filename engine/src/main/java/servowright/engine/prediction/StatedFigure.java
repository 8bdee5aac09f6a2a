package servowright.engine.prediction;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.machine.Declared;

/**
 * A figure of a motor whose meaning depends on its basis, with every basis it could be meant on.
 *
 * @param what     what it is, in words: {@code speed constant}
 * @param stated   the basis that was stated with it, if one was
 * @param readings what it means on each basis, the commonest first
 */
public record StatedFigure(String what, Declared declared, Optional<String> stated, List<Reading> readings) {
    public StatedFigure {
        readings = List.copyOf(readings);
    }

    /**
     * One way to read the figure.
     *
     * @param basis   in words, as in square brackets
     * @param ratio   what it then says over what the bench found, if the bench found anything
     */
    public record Reading(String basis, Optional<Known> ratio) {
        /** Whether it closes with the bench within a share. */
        public boolean closes(double share) {
            return ratio.filter(r -> Math.abs(Math.log(r.si())) <= share).isPresent();
        }
    }

    /** Readings that close with the bench within a share, nearest first. */
    public List<Reading> closing(double share) {
        return readings.stream()
                .filter(r -> r.closes(share))
                .sorted(Comparator.comparingDouble(
                        r -> Math.abs(Math.log(r.ratio().orElseThrow().si()))))
                .toList();
    }

    /** Whether the bench has a figure to compare with. */
    public boolean compared() {
        return readings.stream().anyMatch(r -> r.ratio().isPresent());
    }
}
