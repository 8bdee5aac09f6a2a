package servowright.app.input.capture;

import java.io.IOException;
import servowright.engine.capture.FrameSink;

/** The frames of a capture whose form is known. */
interface CaptureBody {
    /** In words, for people. */
    String words();

    /** Sends frames to {@code sink} until the source ends or {@code most} frames have passed. */
    void read(ByteSource source, FrameSink sink, Counts counts, long most) throws IOException;
}
