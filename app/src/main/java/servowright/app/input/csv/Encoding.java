package servowright.app.input.csv;

/** How the characters of a file are stored, as its first bytes show. */
enum Encoding {
    /** One byte per character as far as numbers and delimiters go: ASCII, UTF-8, Latin-1. */
    BYTES(0),
    BYTES_AFTER_MARK(3),
    UTF_16LE(0),
    UTF_16LE_AFTER_MARK(2),
    UTF_16BE(0),
    UTF_16BE_AFTER_MARK(2);

    private final int mark;

    Encoding(int mark) {
        this.mark = mark;
    }

    /** Length of the byte order mark in bytes. */
    int mark() {
        return mark;
    }

    boolean wide() {
        return this != BYTES && this != BYTES_AFTER_MARK;
    }

    boolean bigEndian() {
        return this == UTF_16BE || this == UTF_16BE_AFTER_MARK;
    }

    /** In words, for the remark on the layout. */
    String words() {
        String name = wide() ? bigEndian() ? "UTF-16 big-endian" : "UTF-16 little-endian" : "text";
        return mark > 0 ? name + " with byte order mark" : name;
    }

    /** The encoding of a file that starts with the first {@code n} bytes of {@code head}. */
    static Encoding detect(byte[] head, int n) {
        int a = n > 0 ? head[0] & 0xff : 0;
        int b = n > 1 ? head[1] & 0xff : 0;
        int c = n > 2 ? head[2] & 0xff : 0;
        if (a == 0xef && b == 0xbb && c == 0xbf) {
            return BYTES_AFTER_MARK;
        }
        if (a == 0xff && b == 0xfe) {
            return UTF_16LE_AFTER_MARK;
        }
        if (a == 0xfe && b == 0xff) {
            return UTF_16BE_AFTER_MARK;
        }
        return withoutMark(head, Math.min(n, 4096) & ~1);
    }

    /** Latin text in two-byte characters has a NUL in nearly every second byte and none in the others. */
    private static Encoding withoutMark(byte[] head, int n) {
        int even = 0;
        int odd = 0;
        for (int i = 0; i < n; i += 2) {
            even += head[i] == 0 ? 1 : 0;
            odd += head[i + 1] == 0 ? 1 : 0;
        }
        if (n >= 4 && odd > 0.4 * n && even < 0.01 * n) {
            return UTF_16LE;
        }
        if (n >= 4 && even > 0.4 * n && odd < 0.01 * n) {
            return UTF_16BE;
        }
        return BYTES;
    }
}
