package servowright.engine.capture;

import java.util.List;

/**
 * What reading a capture came to.
 *
 * @param form how the frames are written, in words
 * @param frames read and passed on
 * @param lost frames that the recording computer says it lost
 * @param xl CAN XL frames, counted and not read
 * @param others records of other things than frames
 * @param malformed lines or records that look like frames and are none
 * @param buses names of the interfaces, by the number in the frames
 * @param notes what was concluded and noticed, sentences without their full stop
 */
public record CaptureSummary(
        String form,
        long frames,
        long lost,
        long xl,
        long others,
        long malformed,
        List<String> buses,
        List<String> notes) {
    public CaptureSummary {
        buses = List.copyOf(buses);
        notes = List.copyOf(notes);
    }

    /** Name of a bus of the capture. */
    public String name(BusTraffic bus) {
        String name = bus.bus() < buses.size() ? buses.get(bus.bus()) : "";
        return name.isEmpty() ? "bus " + (bus.bus() + 1) : name;
    }
}
