package servowright.engine.bus.traffic;

import java.util.List;
import servowright.engine.bus.ErrorState;

/**
 * What became of the traffic.
 *
 * @param streams  in the order they were given
 * @param states   of the nodes at the end, in the order they were given
 * @param left     how often each node had to leave the bus
 * @param frames   frames that got through
 * @param broken   frames that were broken off
 * @param load     share of the time the bus was busy
 */
public record TrafficFigures(
        List<StreamFigures> streams,
        List<ErrorState> states,
        List<Integer> left,
        long frames,
        long broken,
        double load) {
    public TrafficFigures {
        streams = List.copyOf(streams);
        states = List.copyOf(states);
        left = List.copyOf(left);
    }
}
