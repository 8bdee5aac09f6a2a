package servowright.engine.machine;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Place;

/**
 * A capture of the bus as declared on the bench.
 *
 * @param recording        path of its file within the folder of the machine
 * @param networkInterface which of its buses is meant, by name; without it the one with the most frames
 * @param signals          numbers in the data of its messages, in the order of the file
 */
public record BusCapture(Place place, String recording, Optional<String> networkInterface, List<BusSignal> signals) {
    public BusCapture {
        signals = List.copyOf(signals);
    }
}
