package servowright.app.page.bench;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.zip.GZIPInputStream;
import java.util.zip.ZipException;
import servowright.app.page.Limits;

/**
 * Recordings that wait until somebody has said what they show. They lie outside the machine's folder; a packed one is
 * unpacked on the way, both only up to a size.
 */
final class Incoming {
    private static final int BLOCK = 1 << 16;

    private final Map<String, Staged> waiting = new LinkedHashMap<>();
    private final long most;

    Incoming(long most) {
        this.most = most;
    }

    /** Why a file was not taken; a whole sentence. */
    static final class Refused extends Exception {
        private static final long serialVersionUID = 1;

        Refused(String why) {
            super(why);
        }
    }

    /** Takes a file; the oldest one that waits makes room. */
    Staged take(String given, InputStream content) throws IOException, Refused {
        String name = name(given);
        Path file = Files.createTempFile("servowright", ".recording");
        file.toFile().deleteOnExit();
        try (InputStream in = unpacked(new BufferedInputStream(content, BLOCK));
                OutputStream out = Files.newOutputStream(file)) {
            copy(in, out);
        } catch (ZipException e) {
            Files.deleteIfExists(file);
            throw new Refused("It says that it is packed, but it cannot be unpacked.");
        } catch (IOException | Refused e) {
            Files.deleteIfExists(file);
            throw e;
        }
        Staged staged = new Staged(
                UUID.randomUUID().toString(), name.endsWith(".gz") ? name.substring(0, name.length() - 3) : name, file);
        add(staged);
        return staged;
    }

    private synchronized void add(Staged staged) throws IOException {
        waiting.put(staged.id(), staged);
        Iterator<Staged> oldest = waiting.values().iterator();
        while (waiting.size() > Limits.RECORDINGS_WAITING) {
            Files.deleteIfExists(oldest.next().file());
            oldest.remove();
        }
    }

    synchronized Optional<Staged> find(String id) {
        return Optional.ofNullable(waiting.get(id));
    }

    synchronized void done(Staged staged) throws IOException {
        waiting.remove(staged.id());
        Files.deleteIfExists(staged.file());
    }

    private static InputStream unpacked(BufferedInputStream in) throws IOException {
        in.mark(2);
        boolean packed = in.read() == 0x1f && in.read() == 0x8b;
        in.reset();
        return packed ? new GZIPInputStream(in, BLOCK) : in;
    }

    private void copy(InputStream in, OutputStream out) throws IOException, Refused {
        byte[] block = new byte[BLOCK];
        long all = 0;
        for (int n = in.read(block); n >= 0; n = in.read(block)) {
            all += n;
            if (all > most) {
                throw new Refused("It is larger than " + most / 1_000_000
                        + " MB. Put it into the folder yourself and name it in bench.yaml; files of any size are read"
                        + " from there.");
            }
            out.write(block, 0, n);
        }
    }

    /** The last part of the name, with nothing in it that a folder could take for something else. */
    private static String name(String given) {
        String last = given.substring(Math.max(given.lastIndexOf('/'), given.lastIndexOf('\\')) + 1);
        String plain = last.replaceAll("[^\\p{L}\\p{N}._ -]", "-")
                .replaceAll("^[.\\s-]+", "")
                .strip();
        String some = plain.length() > 80 ? plain.substring(plain.length() - 80) : plain;
        return some.isEmpty() ? "recording.csv" : some;
    }
}
