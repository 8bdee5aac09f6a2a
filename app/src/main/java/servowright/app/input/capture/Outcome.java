package servowright.app.input.capture;

/** What a line or record of a capture turned out to be. */
enum Outcome {
    FRAME,
    /** A comment, a heading, a blank line. */
    NOTHING,
    /** The recording computer says that it lost frames. */
    LOST,
    /** A CAN XL frame, which is counted and not read. */
    XL,
    /** A record of something that is not a CAN frame. */
    OTHER,
    /** Looks like a frame and is none. */
    MALFORMED
}
