package servowright.engine.capture;

import java.util.List;
import java.util.Map;

/**
 * What a node that keeps to CiA 301 said about itself.
 *
 * @param bus number of the bus
 * @param number 1 to 127
 * @param heartbeats messages of error control, boot-ups not counted
 * @param lastState last state in them: 4 stopped, 5 operational, 127 pre-operational
 * @param bootUpsNs stamps of boot-up messages, the first hundred
 * @param restarts boot-ups after the node had been heard already, without a reset by the network master in between
 * @param alternations how often the state went to and fro from one heartbeat to the next: two nodes with one number do that
 * @param emergencies emergency codes and how often each was sent; 0 means that errors are gone
 * @param aborts abort codes of service data and how often
 * @param turns states of its axis, the first of them in order of time; empty where it does not show that it keeps to CiA 402
 */
public record Node(
        int bus,
        int number,
        long heartbeats,
        int lastState,
        List<Long> bootUpsNs,
        int restarts,
        int alternations,
        Map<Integer, Long> emergencies,
        Map<Long, Long> aborts,
        List<Turn> turns) {
    /**
     * A new state of the axis.
     *
     * @param atNs    stamp of the first statusword with it
     * @param command the last controlword before
     */
    public record Turn(long atNs, AxisState state, AxisCommand command) {}

    public Node {
        turns = List.copyOf(turns);
        bootUpsNs = List.copyOf(bootUpsNs);
        emergencies = Map.copyOf(emergencies);
        aborts = Map.copyOf(aborts);
    }

    /** Whether two nodes seem to use the number: states that alternate, again and again. */
    public boolean seemsDouble() {
        return alternations >= 4;
    }
}
