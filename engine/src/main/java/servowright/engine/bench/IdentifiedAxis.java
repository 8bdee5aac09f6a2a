package servowright.engine.bench;

import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.encoder.Calibration;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;

/**
 * The angle sensor of an axis as the bench knows it.
 *
 * @param candidates per parameter every value there is, the least uncertain first
 * @param evidence   what each test saw, in the order of the file
 * @param remarks    what was noticed across tests
 */
public record IdentifiedAxis(
        String name,
        Map<AxisParameter, List<Candidate>> candidates,
        List<AngleEvidence> evidence,
        List<Phrase> remarks) {
    public IdentifiedAxis {
        Map<AxisParameter, List<Candidate>> copy = new LinkedHashMap<>();
        candidates.forEach((what, all) -> copy.put(what, List.copyOf(all)));
        candidates = Collections.unmodifiableMap(copy);
        evidence = List.copyOf(evidence);
        remarks = List.copyOf(remarks);
    }

    /** An axis whose sensor was not on the bench. */
    public static IdentifiedAxis untested(String name) {
        return new IdentifiedAxis(name, Map.of(), List.of(), List.of());
    }

    /** The least uncertain value of a parameter, or what would give one. */
    public Outcome<Known> best(AxisParameter what) {
        return candidates.getOrDefault(what, List.of()).stream()
                .findFirst()
                .<Outcome<Known>>map(c -> new Outcome.Answer<>(c.value(), c.working(), c.assumptions()))
                .orElseGet(() -> Outcome.missing(what.words() + " of " + name, what.settle()));
    }

    /** Everything a kind of test saw. */
    public <E extends AngleEvidence> Stream<E> saw(Class<E> kind) {
        return evidence.stream().filter(kind::isInstance).map(kind::cast);
    }

    /** Fits that succeeded. */
    public Stream<Fit> fits() {
        return saw(AngleEvidence.Calibrated.class)
                .filter(c -> c.calibration() instanceof Calibration.Fitted)
                .map(c -> new Fit(c, (Calibration.Fitted) c.calibration()));
    }

    /** The fit to correct by: what is left of it is noise if that of any is, then the least uncertain. */
    public Optional<Fit> correction() {
        return fits().min(Comparator.comparing((Fit f) -> f.fitted().ordersMissing())
                .thenComparingDouble(f -> f.fitted().amplitudeErrorRad()));
    }

    /** A fit with where it came from. */
    public record Fit(AngleEvidence.Calibrated from, Calibration.Fitted fitted) {}
}
