package servowright.engine.bus;

/**
 * How much time errors on the bus may take, as a function of the interval looked at.
 *
 * @see #none()
 * @see #burstAndInterval(int, long, long)
 */
@FunctionalInterface
public interface FaultModel {
    /** Longest error signalling and recovery of a classical bus, bits (recalled; the range is 17 to 31). */
    int RECOVERY_BITS = 31;

    /**
     * Time lost to errors.
     *
     * @param intervalNs interval looked at, ns
     * @param longestNs  longest frame that may have to be sent again, ns
     * @return ns
     */
    long lostNs(long intervalNs, long longestNs);

    /** A bus without errors. */
    static FaultModel none() {
        return (interval, longest) -> 0;
    }

    /**
     * A burst of errors at the worst instant, and after it one error in each interval:
     * E(t) = (31 τ + C) (n + ceil(t / T) - 1).
     *
     * @param burst   errors at once, n, at least 1
     * @param everyNs time between errors, T
     * @param bitNs   bit time τ
     */
    static FaultModel burstAndInterval(int burst, long everyNs, long bitNs) {
        return burstAndInterval(burst, everyNs, RECOVERY_BITS, bitNs);
    }

    /** The same with another length of signalling and recovery, bits. */
    static FaultModel burstAndInterval(int burst, long everyNs, int recoveryBits, long bitNs) {
        return (interval, longest) ->
                (recoveryBits * bitNs + longest) * (burst + WholeNumbers.ceilDivide(interval, everyNs) - 1);
    }

    /** So many errors in all, each with its signalling and recovery in bits: E(t) = (r τ + C) n. */
    static FaultModel burst(int errors, int recoveryBits, long bitNs) {
        return (interval, longest) -> errors * (recoveryBits * bitNs + longest);
    }
}
