package servowright.engine.capture;

import servowright.engine.known.Phrase;

/** Something a capture shows that people should know, in words and figures. */
public record Remark(Kind kind, Phrase words) {
    /** What it is about. */
    public enum Kind {
        /** The clock behind the stamps. */
        STAMPS,
        /** Two nodes where one should be. */
        SENDERS,
        /** Error reports, and controllers that left the bus. */
        ERRORS,
        /** Nodes that started again. */
        RESTART,
        /** Messages that waited and were let go at once. */
        RELEASE,
        /** Emergencies and refused service requests of nodes. */
        COMPLAINT
    }
}
