package servowright.engine.bench;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;

/**
 * Inductance between contacts at one rotor position.
 *
 * @param axis axis of the rotor it was measured on, if known
 */
record LoopInductance(
        Contacts contacts,
        Optional<ChannelRole.RotorAxis> axis,
        Known henry,
        String from,
        Working working,
        List<Phrase> assumptions) {
    LoopInductance {
        assumptions = List.copyOf(assumptions);
    }
}
