package servowright.app.page.bench;

import java.io.IOException;
import java.lang.ref.SoftReference;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import servowright.app.input.TestDraft;
import servowright.app.input.csv.ReadResult;

/** Holds the recording looked at last, so that a closer look does not read it again. */
final class Shelf {
    private record Key(Path file, long size, long changed, Map<String, String> said) {}

    private record Held(Key key, ReadResult result) {}

    private SoftReference<Held> last = new SoftReference<>(null);

    synchronized ReadResult read(Path file, String shown, Map<String, String> said) throws IOException {
        Key key =
                new Key(file, Files.size(file), Files.getLastModifiedTime(file).toMillis(), said);
        Held held = last.get();
        if (held == null || !held.key().equals(key)) {
            last = new SoftReference<>(null);
            held = new Held(key, new TestDraft(said).read(file, shown));
            last = new SoftReference<>(held);
        }
        return held.result();
    }
}
