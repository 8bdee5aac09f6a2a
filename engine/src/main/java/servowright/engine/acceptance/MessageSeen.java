package servowright.engine.acceptance;

import java.util.Locale;
import java.util.Optional;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.IdTraffic;
import servowright.engine.capture.Period;
import servowright.engine.prediction.PlannedMessage;

/**
 * A message of the plan and what a capture shows of it.
 *
 * <p><b>Formula.</b> A message with period T that arrives between C<sub>least</sub> and R after its event has neighbours no closer than
 * T − (R − C<sub>least</sub>) and no further apart than T + (R − C<sub>least</sub>). How far the shortest or longest interval lies off T is
 * therefore the least by which its arrival must have varied, and may be at most R − C<sub>least</sub>, with allowance for the clock of the
 * sender and the steps of the stamps. Intervals across frames that are missing do not count. <b>Source.</b> follows from the definition of
 * the response time, Davis, Burns, Bril, Lukkien 2007 (recalled); allowance 200 ppm and 2 us: common practice, no source.
 *
 * @param seen     its identifier in the capture, if it came at all
 * @param stopped  whether it came no more while the capture went on
 */
public record MessageSeen(PlannedMessage planned, Optional<IdTraffic> seen, boolean stopped) {
    private static final double CLOCKS = 200e-6;
    private static final long STAMPS_NS = 2_000;

    /** A message is over when nothing came for so many periods before the end. */
    private static final int SILENT_PERIODS = 5;

    static MessageSeen of(PlannedMessage planned, BusTraffic traffic) {
        Optional<IdTraffic> seen = traffic.identifiers().stream()
                .filter(id -> id.identifier() == planned.id() && id.extended() == planned.extended())
                .filter(id -> id.frames() > 0)
                .findFirst();
        boolean stopped = planned.steady()
                && seen.filter(id -> traffic.stamps().jumps().isEmpty())
                        .filter(id -> traffic.stamps().lastNs() - id.lastNs() > SILENT_PERIODS * period(planned))
                        .isPresent();
        return new MessageSeen(planned, seen, stopped);
    }

    private static long period(PlannedMessage planned) {
        return planned.response().message().periodNs();
    }

    /** What it is. */
    public String name() {
        return planned.name();
    }

    /** Node that sends it. */
    public String from() {
        return planned.from();
    }

    /** Its identifier as it is written. */
    public String label() {
        return String.format(Locale.ROOT, planned.extended() ? "0x%08X" : "0x%03X", planned.id());
    }

    /** Period of the plan, ns. */
    public long plannedNs() {
        return period(planned);
    }

    /** Period in the capture, frames that are missing counted as sent, ns; 0 when too few came. */
    public double periodNs() {
        return intervals().filledNs();
    }

    /** Frames that are missing between those that came; two senders that alternate leave no gaps. */
    public long missing() {
        return planned.steady() && !intervals().alternates() ? intervals().missing() : 0;
    }

    /** By how much the period is off, as a share of the planned one; 0 when too few came. */
    public double off() {
        return periodNs() == 0 ? 0 : periodNs() / plannedNs() - 1;
    }

    /** By how much the arrival has varied at least, ns. */
    public long variedNs() {
        Period period = intervals();
        if (period.count() == 0) {
            return 0;
        }
        long early = plannedNs() - period.leastNs();
        long late = period.gaps() == 0 && planned.steady() ? period.mostNs() - plannedNs() : 0;
        return Math.max(0, Math.max(early, late));
    }

    /** By how much it may vary, ns; {@link Long#MAX_VALUE} when the plan does not bound it. */
    public long allowedNs() {
        long jitter = planned.arrivalJitterNs();
        return jitter == Long.MAX_VALUE ? jitter : jitter + STAMPS_NS + Math.round(CLOCKS * plannedNs());
    }

    private Period intervals() {
        return seen.map(IdTraffic::period).orElse(Period.NONE);
    }
}
