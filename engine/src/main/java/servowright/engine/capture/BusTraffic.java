package servowright.engine.capture;

import java.util.List;
import java.util.Optional;

/**
 * What a capture showed of one bus.
 *
 * @param bus its number
 * @param frames data and remote frames
 * @param fdFrames those of them that were CAN FD
 * @param timed those that had a stamp
 * @param heldNs time the frames held the bus; number of bits when no rate is known
 * @param loads highest load in windows of 1, 10 and 100 ms; empty without a rate or without stamps
 * @param curve load over time
 * @param fullest the frames of the fullest window of 10 ms; empty without a rate or without stamps
 * @param identifiers traffic by identifier, by priority
 * @param beyond frames of identifiers beyond those that are kept apart
 * @param stamps what the stamps show
 * @param errors error reports
 * @param nodes nodes that keep to CiA 301
 */
public record BusTraffic(
        int bus,
        long frames,
        long fdFrames,
        long timed,
        long heldNs,
        List<Load> loads,
        LoadCurve curve,
        Timeline fullest,
        List<IdTraffic> identifiers,
        long beyond,
        Stamps stamps,
        Errors errors,
        List<Node> nodes) {
    public BusTraffic {
        loads = List.copyOf(loads);
        identifiers = List.copyOf(identifiers);
        nodes = List.copyOf(nodes);
    }

    /** What an identifier is for, where its node shows that it keeps to CiA 301. */
    public Optional<Service> service(IdTraffic id) {
        Service service = id.extended() ? Service.OTHER : Service.of(id.identifier());
        int number = Service.node(id.identifier());
        boolean known = number == 0
                ? !nodes.isEmpty()
                : nodes.stream().anyMatch(n -> n.number() == number && n.lastState() >= 0);
        return known && service != Service.OTHER ? Optional.of(service) : Optional.empty();
    }

    /** Mean load over the time that passed; NaN where none did. */
    public double meanLoad() {
        return stamps.elapsedNs() > 0 ? (double) heldNs / stamps.elapsedNs() : Double.NaN;
    }
}
