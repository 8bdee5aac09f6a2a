package servowright.app.page;

import java.time.Duration;

/** What the page takes on before it says no. */
public final class Limits {
    /** A form that people fill in. */
    public static final long FORM_BYTES = 6_000_000;

    /** A recording, and what comes out of a packed one. */
    public static final long RECORDING_BYTES = 400_000_000;

    /** Recordings waiting to be kept. */
    public static final int RECORDINGS_WAITING = 20;

    /** The whole machine. */
    public static final Duration ASSESSMENT = Duration.ofMinutes(2);

    /** One worksheet or one plot. */
    public static final Duration CALCULATION = Duration.ofSeconds(20);

    /** How long a request waits for an assessment under way before it shows that it waits. */
    static final Duration PATIENCE = Duration.ofMillis(2_500);

    /** The same for the first assessment, before which there is nothing to look at. */
    static final Duration FIRST_PATIENCE = Duration.ofMillis(50);

    /** Requests answered at once. */
    static final int THREADS = 24;

    /** Pages that are told of changes. */
    static final int LISTENERS = 40;

    private Limits() {}
}
