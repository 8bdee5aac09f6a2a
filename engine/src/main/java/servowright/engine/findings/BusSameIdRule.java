package servowright.engine.findings;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.PlannedMessage;
import servowright.engine.prediction.Predictions;

/** Two messages under one identifier: both win the arbitration, and one destroys the other. */
final class BusSameIdRule implements BusRule {
    @Override
    public String id() {
        return "bus-same-id";
    }

    @Override
    public String source() {
        return "ISO 11898-1, bitwise arbitration (text not opened)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return onPlan(predictions, this::answered);
    }

    private List<Finding> answered(Answer<BusPlan> answer) {
        Map<Integer, List<String>> names = new LinkedHashMap<>();
        for (PlannedMessage m : answer.value().messages()) {
            names.computeIfAbsent(m.id(), k -> new ArrayList<>()).add(m.name());
        }
        String sharing = names.entrySet().stream()
                .filter(e -> e.getValue().size() > 1)
                .map(e -> String.join(" and ", e.getValue()) + " (0x" + Integer.toHexString(e.getKey()) + ")")
                .collect(Collectors.joining("; "));
        if (sharing.isEmpty()) {
            return List.of();
        }
        return List.of(Draft.of(this, SUBJECT)
                .verdict(Verdict.FAILS)
                .says(Phrase.of("one identifier is used twice: {sharing}").with("sharing", sharing))
                .because(Phrase.of("sent at once, both win and their data collide: both nodes end off the bus"))
                .remedy(Phrase.of("one identifier for each message; node numbers used once"))
                .from(answer)
                .done());
    }
}
