package servowright.engine.bench;

import java.util.List;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.machine.BusCapture;

/**
 * The machine's bus as a capture shows it.
 *
 * @param test    how it was declared
 * @param summary what reading the file came to
 * @param name    of the interface
 * @param traffic what was seen
 * @param scales  speeds against the positions that they should be the rate of
 */
public record CapturedBus(
        BusCapture test, CaptureSummary summary, String name, BusTraffic traffic, List<SignalScale> scales) {
    public CapturedBus {
        scales = List.copyOf(scales);
    }
}
