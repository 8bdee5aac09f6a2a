package servowright.engine.bus;

/** Bits of a frame in the order in which they are sent, before stuffing. */
final class Bits {
    private static final int RUN = 5;

    private final boolean[] bits;
    private int used;

    Bits(int capacity) {
        bits = new boolean[capacity];
    }

    void put(int value, int count) {
        for (int k = count - 1; k >= 0; k--) {
            bits[used++] = ((value >>> k) & 1) != 0;
        }
    }

    int count() {
        return used;
    }

    /** Stuff bits that runs ending on one of the first so many bits cause. */
    int stuffedBefore(int count) {
        int stuffed = 0;
        int run = 0;
        boolean last = false;
        for (int i = 0; i < count; i++) {
            run = run > 0 && bits[i] == last ? run + 1 : 1;
            last = bits[i];
            if (run == RUN) {
                stuffed++;
                last = !last;
                run = 1;
            }
        }
        return stuffed;
    }
}
