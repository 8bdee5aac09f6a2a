package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.FreeRunFit;
import servowright.engine.encoder.OffsetAtSpeeds;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What several runs of one sensor at different speeds tell that none of them tells alone. */
final class AngleRuns {
    /** Speeds must differ by this factor to tell anything apart. */
    private static final double APART = 1.2;

    private AngleRuns() {}

    /** A run that was fitted. */
    record Run(TestKind kind, Calibration.Fitted fitted, double radPerSecond) {
        static Optional<Run> of(Sensed sensed) {
            return sensed.evidence()
                    .filter(AngleEvidence.Calibrated.class::isInstance)
                    .map(AngleEvidence.Calibrated.class::cast)
                    .filter(c -> c.calibration() instanceof Calibration.Fitted && c.radPerSecond() > 0)
                    .map(c -> new Run(
                            sensed.result().test().kind(), (Calibration.Fitted) c.calibration(), c.radPerSecond()));
        }
    }

    private static List<Run> of(List<Run> runs, TestKind kind) {
        List<Run> chosen = runs.stream()
                .filter(r -> r.kind() == kind)
                .sorted(Comparator.comparingDouble(Run::radPerSecond))
                .toList();
        boolean apart = chosen.size() > 1
                && chosen.get(chosen.size() - 1).radPerSecond()
                        > APART * chosen.get(0).radPerSecond();
        return apart ? chosen : List.of();
    }

    private static double[] speeds(List<Run> runs) {
        return runs.stream().mapToDouble(Run::radPerSecond).toArray();
    }

    /** Delay grows with speed, play does not. */
    static List<Phrase> delayAndPlay(List<Run> all) {
        List<Run> runs = of(all, TestKind.REFERENCE_RUN);
        if (runs.isEmpty()) {
            return List.of();
        }
        OffsetAtSpeeds.Direction[] directions = runs.stream()
                .map(r -> OffsetAtSpeeds.Direction.of(
                        r.fitted().error().meanRad() - r.fitted().lagRad(),
                        r.fitted().error().meanRad() + r.fitted().lagRad()))
                .toArray(OffsetAtSpeeds.Direction[]::new);
        return OffsetAtSpeeds.delayAndPlay(speeds(runs), directions).stream()
                .map(both -> Phrase.of("reference runs at {n} speeds: delay {delay}, play {play}")
                        .with("n", runs.size())
                        .with("delay", new Quantity(both.delaySecond(), Dimension.TIME), "us")
                        .with("play", new Quantity(2 * both.playRad(), Dimension.ANGLE), "deg"))
                .toList();
    }

    /** A speed that truly ripples moves the shaft less the faster it turns; the error of a sensor stays. */
    static List<Phrase> rippleApart(List<Run> all) {
        List<Run> runs = of(all, TestKind.FREE_RUN);
        List<Phrase> found = new ArrayList<>();
        if (runs.isEmpty()) {
            return found;
        }
        for (int order : common(runs)) {
            Ripple[] each = runs.stream().map(r -> ripple(r, order)).toArray(Ripple[]::new);
            Ripple sensor = FreeRunFit.apart(speeds(runs), each);
            found.add(Phrase.of("free runs at {n} speeds: harmonic {k} of the sensor itself is {A}")
                    .with("n", runs.size())
                    .with("k", order)
                    .with("A", new Quantity(sensor.amplitudeRad(), Dimension.ANGLE), "deg"));
        }
        return found;
    }

    private static List<Integer> common(List<Run> runs) {
        return runs.get(0).fitted().error().ripples().stream()
                .map(Ripple::order)
                .filter(order -> runs.stream()
                        .allMatch(r -> r.fitted().error().ripples().stream().anyMatch(x -> x.order() == order)))
                .collect(Collectors.toList());
    }

    private static Ripple ripple(Run run, int order) {
        return run.fitted().error().ripples().stream()
                .filter(r -> r.order() == order)
                .findFirst()
                .orElseThrow();
    }
}
