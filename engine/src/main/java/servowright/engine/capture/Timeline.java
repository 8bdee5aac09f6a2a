package servowright.engine.capture;

import java.util.List;

/**
 * The frames of a window in order: what held the bus, from when to when.
 *
 * @param startNs  stamp at which the window begins
 * @param lengthNs its length
 * @param held     its frames
 */
public record Timeline(long startNs, long lengthNs, List<Held> held) {
    /** Nothing was seen. */
    public static final Timeline NONE = new Timeline(0, 0, List.of());

    /**
     * A frame on the bus.
     *
     * @param fromNs start of frame, ns after the window's begin; negative for one that reaches into it
     * @param toNs   end of frame, ns after the window's begin
     * @param label  identifier as it is written
     * @param rank   priority: a smaller number wins
     */
    public record Held(long fromNs, long toNs, String label, long rank) {}

    public Timeline {
        held = List.copyOf(held);
    }
}
