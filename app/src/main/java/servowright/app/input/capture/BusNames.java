package servowright.app.input.capture;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Numbers the interfaces of a capture in the order in which they appear. */
final class BusNames {
    /** More interfaces than any computer has; further ones share the last number. */
    private static final int MOST = 64;

    private final List<String> names = new ArrayList<>();
    private byte[] last = new byte[0];
    private int lastNumber;

    List<String> names() {
        return List.copyOf(names);
    }

    /** The number of the name from {@code from} to {@code to}. */
    int number(byte[] b, int from, int to) {
        if (!again(b, from, to)) {
            last = Arrays.copyOfRange(b, from, to);
            lastNumber = number(new String(last, StandardCharsets.ISO_8859_1));
        }
        return lastNumber;
    }

    /** Whether it is the name of the frame before: nearly always, and short. */
    private boolean again(byte[] b, int from, int to) {
        byte[] name = last;
        if (to - from != name.length || name.length == 0) {
            return false;
        }
        for (int k = 0; k < name.length; k++) {
            if (b[from + k] != name[k]) {
                return false;
            }
        }
        return true;
    }

    int number(String name) {
        int k = names.indexOf(name);
        if (k >= 0 || names.size() == MOST) {
            return k >= 0 ? k : MOST - 1;
        }
        names.add(name);
        return names.size() - 1;
    }
}
