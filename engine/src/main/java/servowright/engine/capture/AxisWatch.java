package servowright.engine.capture;

import java.util.ArrayList;
import java.util.List;

/**
 * Follows the statusword and controlword of a node, where they are what its first process data begin with, as the default mapping of
 * CiA 402 has it. Whether they are is judged from the words: four of five at random mean no state.
 */
final class AxisWatch {
    private static final int ENOUGH = 20;
    private static final int MOST = 32;

    private final List<Node.Turn> turns = new ArrayList<>();
    private AxisState state = AxisState.UNDEFINED;
    private AxisCommand command = AxisCommand.DISABLE_VOLTAGE;
    private long words;
    private boolean other;

    void status(Frame frame) {
        if (other || frame.length() < 2) {
            other = true;
            return;
        }
        AxisState now = AxisState.of((int) frame.little(0, 2));
        words++;
        other = now == AxisState.UNDEFINED;
        if (now != state && turns.size() < MOST) {
            turns.add(new Node.Turn(frame.timeNs(), now, command));
        }
        state = now;
    }

    void command(Frame frame) {
        if (frame.length() >= 2) {
            command = AxisCommand.of((int) frame.little(0, 2));
        }
    }

    /** The states it went through; empty where the words cannot be statuswords, were too few, or all nought. */
    List<Node.Turn> turns() {
        boolean says = turns.stream().anyMatch(t -> t.state() != AxisState.NOT_READY);
        return other || words < ENOUGH || !says ? List.of() : List.copyOf(turns);
    }
}
