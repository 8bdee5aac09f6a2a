package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * What an ohmmeter shows between the two bus lines with the power off: all terminators and the input resistances of all nodes in
 * parallel, R = 1 / (Σ 1/R_t + n / R_diff).
 *
 * <p><b>Valid for</b> a trunk whose own resistance is small against the terminators. Two of 120 ohm give 60; one 120; three 40; four
 * 30.
 */
public final class Terminators {
    private Terminators() {}

    /**
     * Reading, ohm.
     *
     * @param each     resistance of one terminator, ohm
     * @param count    how many; 0 leaves the nodes alone
     * @param nodes    how many nodes are connected
     * @param nodeOhm  differential input resistance of a node, ohm
     */
    public static double readingOhm(double each, int count, int nodes, double nodeOhm) {
        Require.positive("terminator", each, "ohm");
        Require.positive("input resistance of a node", nodeOhm, "ohm");
        Require.atLeast("number of terminators", 0, count);
        Require.atLeast("number of nodes", 0, nodes);
        return 1 / (count / each + nodes / nodeOhm);
    }

    /** How many terminators a reading means: the number whose reading is nearest in logarithm. */
    public static int countFor(double readingOhm, double each, int nodes, double nodeOhm) {
        Require.positive("reading", readingOhm, "ohm");
        int best = 0;
        double off = Double.POSITIVE_INFINITY;
        for (int n = 0; n <= 12; n++) {
            double expected = n == 0 && nodes == 0 ? 1e9 : readingOhm(each, n, nodes, nodeOhm);
            double distance = Math.abs(Math.log(readingOhm / expected));
            if (distance < off) {
                off = distance;
                best = n;
            }
        }
        return best;
    }
}
