package servowright.app.input.tree;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/**
 * A text file as it was read.
 *
 * @param file   as the user knows it
 * @param text   its characters, lines ending in a line feed
 * @param sha256 of its bytes, hexadecimal
 */
public record SourceText(String file, String text, String sha256) {
    /** Longest file that is read, bytes: a hundred times what a person writes. */
    public static final int LONGEST = 5_000_000;

    /** Reads {@code path}; what stands in the way becomes a problem. */
    public static Optional<SourceText> read(Path path, String file, Problems problems) {
        Place whole = new Place(file, 0, "");
        try {
            if (!Files.isRegularFile(path)) {
                problems.add(
                        Problem.Kind.UNREADABLE, whole, "", file + " is no file", "", "Put a text file in its place.");
                return Optional.empty();
            }
            byte[] bytes = start(path);
            if (bytes.length > LONGEST) {
                String size = Math.round(Math.ceil(Files.size(path) / 1e6)) + " MB";
                String most = LONGEST / 1_000_000 + " MB";
                problems.add(
                        Problem.Kind.UNREADABLE,
                        whole,
                        size,
                        "a file of " + size + " is no description of a machine; at most " + most + " are read",
                        most,
                        "Keep recordings in files of their own.");
                return Optional.empty();
            }
            return decoded(bytes, file, problems);
        } catch (IOException e) {
            problems.add(Problem.Kind.UNREADABLE, whole, "", file + " cannot be read", "", "Check its access rights.");
            return Optional.empty();
        }
    }

    private static byte[] start(Path path) throws IOException {
        try (InputStream in = Files.newInputStream(path)) {
            return in.readNBytes(LONGEST + 1);
        }
    }

    private static Optional<SourceText> decoded(byte[] bytes, String file, Problems problems) {
        Charset charset = charset(bytes);
        ByteBuffer rest = ByteBuffer.wrap(bytes);
        String text;
        try {
            text = charset.newDecoder().decode(rest).toString();
        } catch (CharacterCodingException e) {
            problems.add(
                    Problem.Kind.UNREADABLE,
                    new Place(file, lineOf(bytes, rest.position()), ""),
                    "",
                    "here are bytes that are no " + charset.name() + " text",
                    "",
                    "Save the file as UTF-8 text.");
            return Optional.empty();
        }
        String body = text.startsWith("\ufeff") ? text.substring(1) : text;
        int odd = firstControl(body);
        if (odd >= 0) {
            problems.add(
                    Problem.Kind.UNREADABLE,
                    new Place(file, lineOf(body, odd), ""),
                    "",
                    String.format("here is the control character %04X, which no text has", (int) body.charAt(odd)),
                    "",
                    "Check that this is a text file; save it as UTF-8.");
            return Optional.empty();
        }
        return Optional.of(new SourceText(file, body.replace("\r\n", "\n").replace('\r', '\n'), sha256(bytes)));
    }

    private static Charset charset(byte[] bytes) {
        if (bytes.length >= 2 && (bytes[0] & 0xff) == 0xff && (bytes[1] & 0xff) == 0xfe) {
            return StandardCharsets.UTF_16LE;
        }
        if (bytes.length >= 2 && (bytes[0] & 0xff) == 0xfe && (bytes[1] & 0xff) == 0xff) {
            return StandardCharsets.UTF_16BE;
        }
        return StandardCharsets.UTF_8;
    }

    /** Place of the first character that YAML 1.2.2, 5.1 does not count as printable; -1 if there is none. */
    private static int firstControl(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean blank = c == '\n' || c == '\r' || c == '\t' || c == '\u0085';
            boolean control = c < 0x20 || (c >= 0x7f && c < 0xa0) || c == '\ufffe' || c == '\uffff';
            if (control && !blank) {
                return i;
            }
        }
        return -1;
    }

    private static int lineOf(byte[] bytes, int end) {
        int line = 1;
        for (int i = 0; i < Math.min(end, bytes.length); i++) {
            line += bytes[i] == '\n' ? 1 : 0;
        }
        return line;
    }

    private static int lineOf(String text, int end) {
        return 1
                + (int) text.substring(0, end)
                        .replace("\r\n", "\n")
                        .replace('\r', '\n')
                        .chars()
                        .filter(c -> c == '\n')
                        .count();
    }

    private static String sha256(byte[] bytes) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
