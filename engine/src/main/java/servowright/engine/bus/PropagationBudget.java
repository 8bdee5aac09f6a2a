package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Time a bit needs to the farthest node and the answer back: t = 2 (L · t' + t_transceiver + 2 t_isolator + t_controller).
 *
 * <p>Arbitration and acknowledgement demand that the propagation segment covers it. <b>Source.</b> Hartwich and Bassemir, The
 * configuration of the CAN bit timing, 6th iCC; worked examples of controller manuals (seen).
 *
 * @param metre         length between the two farthest nodes, m
 * @param nsPerMetre    delay of the cable; 5 to 5.5 ns/m is common practice
 * @param transceiverNs sending and receiving delay of a transceiver together (its loop delay), ns
 * @param isolatorNs    delay of an isolator in one direction, ns; 0 without one
 * @param controllerNs  delay of the controller's own logic, ns
 */
public record PropagationBudget(
        double metre, double nsPerMetre, double transceiverNs, double isolatorNs, double controllerNs) {
    public PropagationBudget {
        Require.notNegative("length", metre, "m");
        Require.notNegative("delay of the cable", nsPerMetre, "ns/m");
        Require.notNegative("delay of the transceiver", transceiverNs, "ns");
        Require.notNegative("delay of the isolator", isolatorNs, "ns");
        Require.notNegative("delay of the controller", controllerNs, "ns");
    }

    /** Delay of one node, its sending and its receiving part, ns. */
    public double nodeNs() {
        return transceiverNs + 2 * isolatorNs + controllerNs;
    }

    /** There and back, ns. */
    public double roundTripNs() {
        return 2 * (metre * nsPerMetre + nodeNs());
    }

    /** Quanta the propagation segment needs, whole. */
    public int neededProp(BitTiming timing) {
        return (int) Math.ceil(roundTripNs() / timing.quantumNs() - 1e-9);
    }

    /** What is left of the propagation segment, ns; negative when it is too short. */
    public double roomNs(BitTiming timing) {
        return timing.prop() * timing.quantumNs() - roundTripNs();
    }

    /** Longest bus that a timing bears with these nodes, m. */
    public double longestMetre(BitTiming timing) {
        return timing.longestBusMetre(nodeNs(), nsPerMetre);
    }
}
