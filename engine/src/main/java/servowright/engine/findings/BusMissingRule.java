package servowright.engine.findings;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.acceptance.MessageSeen;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Phrase;

/** Every message of the plan comes, to the end, and none is left out. */
final class BusMissingRule implements SeenRule {
    private static final int NAMED = 6;

    @Override
    public String id() {
        return "bus-message-missing";
    }

    @Override
    public String source() {
        return "common practice, no source: a promised message comes, and no frame of it is lost";
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        List<MessageSeen> promised =
                seen.messages().stream().filter(m -> m.planned().steady()).toList();
        if (promised.isEmpty()) {
            return Stream.of();
        }
        List<MessageSeen> gone =
                promised.stream().filter(m -> m.seen().isEmpty() || m.stopped()).toList();
        List<MessageSeen> holed = promised.stream()
                .filter(m -> !gone.contains(m) && m.missing() > 0)
                .toList();
        Draft draft = Draft.of(this, subject);
        if (!gone.isEmpty()) {
            draft.verdict(Verdict.FAILS)
                    .says(Phrase.of("{gone} of {count} promised messages are absent or stop: {names}")
                            .with("gone", gone.size())
                            .with("count", promised.size())
                            .with("names", names(gone)))
                    .because(Phrase.of("sent by {nodes}")
                            .with(
                                    "nodes",
                                    gone.stream()
                                            .map(m -> m.planned().from())
                                            .distinct()
                                            .collect(Collectors.joining(", "))));
        } else if (!holed.isEmpty()) {
            draft.verdict(Verdict.FAILS)
                    .says(Phrase.of("{count} frames are missing: {names}")
                            .with("count", (double) holed.stream()
                                    .mapToLong(MessageSeen::missing)
                                    .sum())
                            .with("names", holes(holed)))
                    .because(Phrase.of("gaps between frames of one message, filled at its usual period"));
        } else {
            draft.says(Phrase.of("all {count} promised messages come, without a gap")
                    .with("count", promised.size()));
        }
        return Stream.of(draft.remedy(Phrase.of(
                "power, cable and state of the nodes that are silent; then the load of the computer that sends")));
    }

    private static String names(List<MessageSeen> some) {
        return listed(some, m -> m.planned().name() + (m.stopped() ? " (stops)" : ""));
    }

    private static String holes(List<MessageSeen> some) {
        return listed(some, m -> m.planned().name() + " " + m.missing());
    }

    private static String listed(List<MessageSeen> some, Function<MessageSeen, String> words) {
        String names = some.stream().limit(NAMED).map(words).collect(Collectors.joining(", "));
        return some.size() > NAMED ? names + " and " + (some.size() - NAMED) + " more" : names;
    }
}
