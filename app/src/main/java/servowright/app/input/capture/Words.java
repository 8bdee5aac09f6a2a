package servowright.app.input.capture;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import servowright.engine.capture.Frame;

/** A line of text cut into words. */
final class Words {
    /** No line of a frame is longer: 64 bytes in binary digits and what stands around them. */
    private static final int LONGEST = 2000;

    private final List<String> words;
    private int at;

    private Words(List<String> words) {
        this.words = words;
    }

    /** The words between {@code from} and {@code to}, colours of terminals left out. */
    static Words of(byte[] b, int from, int to) {
        String text = new String(b, from, Math.min(to - from, LONGEST), StandardCharsets.ISO_8859_1);
        String plain = text.indexOf('\u001b') < 0 ? text : text.replaceAll("\u001b\\[[0-9;]*m", "");
        List<String> words = new ArrayList<>();
        for (String word : plain.split("[ \\t]+")) {
            if (!word.isEmpty()) {
                words.add(word);
            }
        }
        return new Words(words);
    }

    int left() {
        return words.size() - at;
    }

    /** The next word, or an empty one behind the last. */
    String peek() {
        return peek(0);
    }

    String peek(int ahead) {
        return at + ahead < words.size() ? words.get(at + ahead) : "";
    }

    String next() {
        String word = peek();
        at++;
        return word;
    }

    /** Takes the next word if it is this one. */
    boolean take(String word) {
        boolean same = peek().equalsIgnoreCase(word);
        at += same ? 1 : 0;
        return same;
    }

    /** Reads {@code n} bytes; in base 16 each has one or two digits. Returns how many there were. */
    int bytes(Frame frame, int n, int base) {
        int k = 0;
        while (k < n && k < Frame.MOST_BYTES) {
            int value = number(peek(), base);
            if (value < 0 || value > 255) {
                return k;
            }
            frame.data()[k++] = (byte) value;
            at++;
        }
        return k;
    }

    /** A whole number of at most 8 digits, or -1. */
    static int number(String word, int base) {
        if (word.isEmpty() || word.length() > 8) {
            return -1;
        }
        long value = 0;
        for (int i = 0; i < word.length(); i++) {
            int digit = word.charAt(i) < 128 ? Character.digit(word.charAt(i), base) : -1;
            if (digit < 0) {
                return -1;
            }
            value = value * base + digit;
        }
        return value > Integer.MAX_VALUE ? -1 : (int) value;
    }

    /** A decimal number of seconds or milliseconds as nanoseconds, or -1. */
    static long nanoseconds(String word, long perUnit) {
        byte[] b = word.getBytes(StandardCharsets.ISO_8859_1);
        return Digits.nanoseconds(b, 0, b.length, perUnit);
    }
}
