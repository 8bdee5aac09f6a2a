package servowright.app.input;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a file whole or not at all: beside its place first, then moved there. */
public final class WholeFile {
    private static final int BUFFER = 1 << 16;

    private WholeFile() {}

    /** Puts out the content of a file, and gives what was found on the way. */
    @FunctionalInterface
    public interface Content<T> {
        T to(OutputStream out) throws IOException;
    }

    /** Writes text, over what may be there; to a device or a pipe as it is. */
    public static void text(Path target, String text) throws IOException {
        if (Files.exists(target) && !Files.isRegularFile(target)) {
            Files.writeString(target, text);
            return;
        }
        write(Files.exists(target) ? target.toRealPath() : target, out -> {
            out.write(text.getBytes(StandardCharsets.UTF_8));
            return text;
        });
    }

    /**
     * Writes a new file.
     *
     * @throws FileAlreadyExistsException if there is one of that name
     */
    public static <T> T fresh(Path target, Content<T> content) throws IOException {
        if (Files.exists(target)) {
            throw new FileAlreadyExistsException(target.toString());
        }
        return write(target, content);
    }

    private static <T> T write(Path target, Content<T> content) throws IOException {
        Path fresh = target.toAbsolutePath().resolveSibling(".servowright" + System.nanoTime() + ".part");
        try {
            T found;
            try (OutputStream out =
                    new BufferedOutputStream(Files.newOutputStream(fresh, StandardOpenOption.CREATE_NEW), BUFFER)) {
                found = content.to(out);
            }
            if (Files.exists(target)) {
                rights(target, fresh);
            }
            move(fresh, target);
            return found;
        } finally {
            Files.deleteIfExists(fresh);
        }
    }

    /** Puts a file that is whole in the place of another. */
    static void move(Path fresh, Path target) throws IOException {
        try {
            Files.move(fresh, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            Files.move(fresh, target, StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** Gives one file the rights of another. */
    static void rights(Path from, Path to) throws IOException {
        try {
            Files.setPosixFilePermissions(to, Files.getPosixFilePermissions(from));
        } catch (UnsupportedOperationException e) {
            // A file system without such rights has none to keep.
        }
    }
}
