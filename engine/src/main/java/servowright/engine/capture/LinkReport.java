package servowright.engine.capture;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bus.BitTiming;

/**
 * What the kernel tells of a CAN interface: how its controller cuts a bit, in which state it is, and what it has counted.
 *
 * @param name      of the interface
 * @param state     as it is written: {@code ERROR-ACTIVE}, {@code ERROR-WARNING}, {@code ERROR-PASSIVE}, {@code BUS-OFF}, {@code STOPPED}
 * @param modes     switched on, {@code LOOPBACK} for example; empty for none
 * @param counters  error counters of the controller now, by {@code tx} and {@code rx}; empty where it does not tell
 * @param restartMs wait after it had to leave the bus before it comes back; 0 never, absent where nothing is said
 * @param nominal   timing of arbitration; absent while it is not set
 * @param data      timing of FD data
 * @param counted   what was counted since the interface came up, by words
 */
public record LinkReport(
        String name,
        String state,
        String modes,
        Map<String, Long> counters,
        Optional<Long> restartMs,
        Optional<Phase> nominal,
        Optional<Phase> data,
        Map<String, Long> counted) {
    /** Left the bus. */
    public static final String OFF = "BUS-OFF";

    /** Not started. */
    public static final String STOPPED = "STOPPED";

    /** All is well. */
    public static final String ACTIVE = "ERROR-ACTIVE";

    /**
     * How a bit is cut.
     *
     * @param bitsPerSecond rate as it is stated
     * @param samplePoint   as it is stated, 0 to 1; 0 where it is not
     * @param timing        from the segments; absent where they are not told or impossible
     */
    public record Phase(double bitsPerSecond, double samplePoint, Optional<BitTiming> timing) {
        /** The rate that the segments give, or else the one that is stated, bit/s. */
        public double rate() {
            return timing.map(BitTiming::bitsPerSecond).orElse(bitsPerSecond);
        }
    }

    public LinkReport {
        counters = Collections.unmodifiableMap(new LinkedHashMap<>(counters));
        counted = Collections.unmodifiableMap(new LinkedHashMap<>(counted));
    }

    /** How often something was counted; 0 where nothing is said. */
    public long count(String what) {
        return counted.getOrDefault(what, 0L);
    }
}
