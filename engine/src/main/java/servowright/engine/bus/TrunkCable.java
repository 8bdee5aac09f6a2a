package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * How long a trunk may be for the level at its far end.
 *
 * <p><b>Formula.</b> Loop of the two wires each R_w against the far terminator and the nodes there: R_w,max = (V_out / V_req - 1) / (2
 * (1 / R_T + (n - 1) / R_diff)), V_req = V_th + k (V_out - V_th), k the share kept as margin.
 *
 * <p><b>Source.</b> ISO 11898-2 / CiA 303-1 tables as reprinted in public fieldbus manuals. With V_out 1.5 V, V_th 1.0 V, k = 0.2 the
 * formula gives the ratios of their table for 32, 64 and 100 nodes, not its absolute lengths: those need k = 1/3. The table is the
 * more careful one.
 */
public final class TrunkCable {
    private TrunkCable() {}

    /**
     * Largest resistance of one wire, ohm.
     *
     * @param outVolt       least dominant level of a sender, V
     * @param thresholdVolt level a receiver needs, V
     * @param margin        share k of the difference kept, 0 to 1
     * @param terminatorOhm the far terminator, ohm
     * @param nodes         number of nodes
     * @param nodeOhm       differential input resistance of a node, ohm
     */
    public static double mostWireOhm(
            double outVolt, double thresholdVolt, double margin, double terminatorOhm, int nodes, double nodeOhm) {
        Require.within("margin", 0, 1, margin, "");
        Require.positive("threshold", thresholdVolt, "V");
        Require.positive("terminator", terminatorOhm, "ohm");
        Require.positive("input resistance of a node", nodeOhm, "ohm");
        double needed = thresholdVolt + margin * (outVolt - thresholdVolt);
        return Math.max(0, (outVolt / needed - 1) / (2 * (1 / terminatorOhm + (nodes - 1) / nodeOhm)));
    }

    /**
     * Longest stub that an edge does not see: a third of the length at which its echo comes back within the edge, l = t_edge /
     * (3 · t'), t' the delay there and back per metre. <b>Source.</b> glossary of a space standard (seen): 50 ns edge, 10 ns/m, 5/3 m.
     */
    public static double longestStubMetre(double edgeNs, double returnNsPerMetre) {
        Require.positive("edge time", edgeNs, "ns");
        Require.positive("delay there and back", returnNsPerMetre, "ns/m");
        return edgeNs / returnNsPerMetre / 3;
    }

    /**
     * Level at the far end, V: V_out · R_far / (R_far + 2 R_w), R_far the far terminator in parallel with the nodes there.
     *
     * @param outVolt       level of the sender, V
     * @param wireOhm       resistance of one wire over the whole trunk, ohm
     * @param terminatorOhm the far terminator, ohm
     * @param nodes         number of nodes
     * @param nodeOhm       differential input resistance of a node, ohm
     */
    public static double farEndVolt(double outVolt, double wireOhm, double terminatorOhm, int nodes, double nodeOhm) {
        Require.notNegative("wire resistance", wireOhm, "ohm");
        Require.positive("terminator", terminatorOhm, "ohm");
        Require.positive("input resistance of a node", nodeOhm, "ohm");
        Require.atLeast("number of nodes", 1, nodes);
        double far = 1 / (1 / terminatorOhm + (nodes - 1) / nodeOhm);
        return outVolt * far / (far + 2 * wireOhm);
    }

    /**
     * Resistance of one wire, ohm: ρ (1 + α (T - 20 degC)) L / A, copper, ρ = 0.017241 ohm mm2/m, α = 0.00393 /K (IACS, recalled).
     *
     * @param metre   length, m
     * @param mm2     cross-section, mm2
     * @param celsius temperature, degC
     */
    public static double wireOhm(double metre, double mm2, double celsius) {
        Require.positive("cross-section", mm2, "mm2");
        return 0.017241 * (1 + 0.00393 * (celsius - 20)) * metre / mm2;
    }
}
