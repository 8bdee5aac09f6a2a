package servowright.engine.bus;

/**
 * Clock tolerance of a CAN FD node with two bit timings: the smallest of five conditions, each node's clock, relative.
 *
 * <p><b>Formula.</b> With n the nominal and d the data phase, N bits in their own quanta, m the prescalers: (1) sjw_n / (20 N_n);
 * (2) min(ps1_n, ps2_n) / (2 (13 N_n - ps2_n)); (3) sjw_d / (20 N_d); (4) min(ps1_n, ps2_n) / (2 ((6 N_d - ps2_d) m_d/m_n + 7
 * N_n)); (5) (sjw_d - max(0, m_n/m_d - 1)) / (2 ((2 N_n - ps2_n) m_n/m_d + ps2_d + 4 N_d)).
 *
 * <p><b>Source.</b> Mutter, Robustness of a CAN FD bus system, iCC 2013 (recalled, text not opened).
 *
 * @param conditions the five, in their order
 */
public record FdTolerance(double[] conditions) {
    /** The five conditions of a pair of timings on one clock. */
    public static FdTolerance of(BitTiming nominal, BitTiming data) {
        double slow = nominal.prescaler();
        double fast = data.prescaler();
        double phase = Math.min(nominal.ps1(), nominal.ps2());
        double nBit = nominal.quanta();
        double dBit = data.quanta();
        return new FdTolerance(new double[] {
            nominal.toleranceBetweenEdges(),
            nominal.toleranceAfterError(),
            data.toleranceBetweenEdges(),
            phase / (2 * ((6 * dBit - data.ps2()) * fast / slow + 7 * nBit)),
            (data.sjw() - Math.max(0, slow / fast - 1))
                    / (2 * ((2 * nBit - nominal.ps2()) * slow / fast + data.ps2() + 4 * dBit))
        });
    }

    /** What each clock may deviate. */
    public double least() {
        double least = conditions[0];
        for (double c : conditions) {
            least = Math.min(least, c);
        }
        return least;
    }
}
