package servowright.engine.capture;

/** Frames for the tests, with invented times and bytes. */
final class Frames {
    static final long MS = 1_000_000;

    private Frames() {}

    static Frame data(long atNs, int id, int... bytes) {
        return filled(new Frame().start(atNs, 0, id, 0), bytes);
    }

    static Frame error(long atNs, int classes, int... bytes) {
        return filled(new Frame().start(atNs, 0, classes, Frame.ERROR), bytes);
    }

    static Frame filled(Frame frame, int... bytes) {
        for (int k = 0; k < bytes.length; k++) {
            frame.data()[k] = (byte) bytes[k];
        }
        return frame.sized(bytes.length);
    }

    static BusTraffic seen(Traffic traffic) {
        return traffic.seen().get(0);
    }

    static IdTraffic id(Traffic traffic, int identifier) {
        return seen(traffic).identifiers().stream()
                .filter(t -> t.identifier() == identifier)
                .findFirst()
                .orElseThrow();
    }
}
