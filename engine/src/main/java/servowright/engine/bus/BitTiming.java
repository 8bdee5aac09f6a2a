package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Bit timing of one node: the bit cut into time quanta.
 *
 * <p>A bit is 1 + prop + ps1 + ps2 quanta; it is sampled at the end of ps1. A quantum is prescaler / clock.
 *
 * @param clockHz   clock of the controller
 * @param prescaler clock periods in a quantum
 * @param prop      propagation segment, quanta
 * @param ps1       phase segment 1, quanta
 * @param ps2       phase segment 2, quanta
 * @param sjw       synchronisation jump width, quanta
 */
public record BitTiming(long clockHz, int prescaler, int prop, int ps1, int ps2, int sjw) {
    public BitTiming {
        Require.positive("clock", (double) clockHz, "Hz");
        Require.atLeast("prescaler", 1, prescaler);
        Require.atLeast("propagation segment", 0, prop);
        Require.atLeast("phase segment 1", 1, ps1);
        Require.atLeast("phase segment 2", 1, ps2);
        Require.within("synchronisation jump width", 1, Math.min(ps1, ps2), sjw, "quanta");
    }

    /** Quanta in a bit. */
    public int quanta() {
        return 1 + prop + ps1 + ps2;
    }

    /** Bits per second that are really achieved. */
    public double bitsPerSecond() {
        return (double) clockHz / prescaler / quanta();
    }

    /** Length of a quantum, ns. */
    public double quantumNs() {
        return 1e9 * prescaler / clockHz;
    }

    /** Where in the bit it is sampled, 0 to 1. */
    public double samplePoint() {
        return (1.0 + prop + ps1) / quanta();
    }

    /**
     * Largest deviation of each node's clock, relative, that resynchronisation after an error still bears:
     * df = min(ps1, ps2) / (2 (13 N - ps2)), N quanta in a bit. <b>Source.</b> Hartwich and Bassemir, The configuration of the
     * CAN bit timing, 6th iCC; seen in controller manuals (one of them takes prop + ps1 for ps1, which is harmless only while
     * ps2 is smaller).
     */
    public double toleranceAfterError() {
        return Math.min(ps1, ps2) / (2.0 * (13 * quanta() - ps2));
    }

    /**
     * Largest deviation of each node's clock, relative, that ten bits without an edge bear: df = sjw / (20 N). <b>Source.</b> as
     * for {@link #toleranceAfterError}.
     */
    public double toleranceBetweenEdges() {
        return sjw / (20.0 * quanta());
    }

    /** The smaller of both: what each clock may deviate. */
    public double clockTolerance() {
        return Math.min(toleranceAfterError(), toleranceBetweenEdges());
    }

    /**
     * Longest bus that the propagation segment covers: prop · tq = 2 (L · t' + d), with 0 when the nodes alone take more.
     *
     * @param nodeDelayNs one-way delay of sending and receiving parts of one node together, ns
     * @param nsPerMetre  delay of the cable; 5 to 5.5 ns/m is common practice
     * @return metres
     */
    public double longestBusMetre(double nodeDelayNs, double nsPerMetre) {
        return Math.max(0, (prop * quantumNs() / 2 - nodeDelayNs) / nsPerMetre);
    }

    /** Quanta the propagation segment should have for a bus: 2 (L · t' + d) / tq. */
    public double neededProp(double metre, double nodeDelayNs, double nsPerMetre) {
        return 2 * (metre * nsPerMetre + nodeDelayNs) / quantumNs();
    }
}
