package servowright.engine.capture;

/** Takes frames in the order of the capture. */
public interface FrameSink {
    /** The frame belongs to the sender and is refilled for the next one: take out what is to be kept. */
    void frame(Frame frame);

    /** The capture says that the recording computer lost frames here. */
    default void lost(long frames) {}
}
