package servowright.app.input.capture;

import servowright.engine.capture.Frame;

/** One way to write frames as lines of text. */
interface LineForm {
    /** In words, for people. */
    String words();

    /** Reads the line from {@code from} to {@code to}, without its end; fills {@code frame} when it is one. */
    Outcome read(byte[] b, int from, int to, Frame frame);

    /** Why the last line was malformed, or how many frames it said were lost. */
    String reason();
}
