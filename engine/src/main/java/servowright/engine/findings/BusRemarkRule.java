package servowright.engine.findings;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.acceptance.Verdict;
import servowright.engine.capture.Remark;
import servowright.engine.capture.Remark.Kind;
import servowright.engine.capture.Remarks;
import servowright.engine.known.Phrase;

/**
 * What is odd about a capture whatever was planned: one rule for each kind of remark.
 *
 * @param absent what it says when there is nothing of the kind
 */
record BusRemarkRule(String id, Kind kind, Verdict verdict, String absent, String reason, String remedy, String source)
        implements SeenRule {
    /** Two nodes use one identifier or one number. */
    static BusRemarkRule twoSenders() {
        return new BusRemarkRule(
                "bus-two-senders",
                Kind.SENDERS,
                Verdict.FAILS,
                "each identifier has one sender",
                "sent at once, both win the arbitration and destroy each other",
                "unplug one node after the other: the identifier that goes on has a second sender",
                "CiA 301, one node per number (from memory); intervals that add up: common practice, no source");
    }

    /** Error reports. */
    static BusRemarkRule errors() {
        return new BusRemarkRule(
                "bus-errors-seen",
                Kind.ERRORS,
                Verdict.FAILS,
                "no error was reported",
                "nobody acknowledged: alone on the bus, or wrong rate; protocol violated: cable, terminators, ground, or two"
                        + " senders of one identifier",
                "terminators with power off, then the bit timing of each node, then node by node",
                "ISO 11898-1, fault confinement (text not opened); classes of the kernel's header for CAN errors (seen)");
    }

    /** Nodes that started again. */
    static BusRemarkRule restarts() {
        return new BusRemarkRule(
                "bus-restart-seen",
                Kind.RESTART,
                Verdict.FAILS,
                "no node started again",
                "a boot-up message comes once after power comes",
                "the supply of that node while motors accelerate; then its watchdog",
                "CiA 301, boot-up protocol (from memory)");
    }

    /** Queues that were let go. */
    static BusRemarkRule releases() {
        return new BusRemarkRule(
                "bus-queue-let-go",
                Kind.RELEASE,
                Verdict.FAILS,
                "no queue was let go",
                "commands that waited are sent at once when the bus comes back: the axis jumps through old set points",
                "empty the queue when the stop is pressed; send again from where the axis stands",
                "practitioners' reports on public forums; common practice, no source");
    }

    @Override
    public Stream<Draft> look(PlanSeen seen, String subject) {
        List<Remark> some = Remarks.of(seen.capture().traffic()).stream()
                .filter(r -> r.kind() == kind)
                .toList();
        if (some.isEmpty()) {
            return Stream.of(Draft.of(this, subject).says(Phrase.of(absent)));
        }
        Phrase more = some.size() == 1
                ? Phrase.of(reason)
                : Phrase.of("{count} more; " + reason).with("count", some.size() - 1);
        return Stream.of(Draft.of(this, subject)
                .verdict(verdict)
                .says(some.get(0).words())
                .because(more)
                .remedy(Phrase.of(remedy)));
    }
}
