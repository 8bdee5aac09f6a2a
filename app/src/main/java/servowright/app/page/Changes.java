package servowright.app.page;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import servowright.app.input.MachineText;

/** What was written from the page in this run, so that it can be taken back, the last one first. */
public final class Changes {
    private static final int REMEMBERED = 100;

    /**
     * One change.
     *
     * @param what   in a few words: {@code gap 1.9 mm to 2 mm}
     * @param before text of the file before it; empty when there was no such file
     * @param mark   of the file after it
     */
    record Change(String what, String file, Optional<String> before, String mark) {}

    private final Watch watch;
    private final Deque<Change> done = new ArrayDeque<>();

    Changes(Watch watch) {
        this.watch = watch;
    }

    /** Writes the whole text of a file over what was read before. */
    public synchronized MachineText.Outcome write(MachineText read, String text, String what) {
        MachineText.Outcome outcome =
                MachineText.write(watch.folder(), read.source().file(), read.mark(), text);
        if (outcome instanceof MachineText.Written written) {
            if (done.size() == REMEMBERED) {
                done.removeLast();
            }
            done.push(new Change(
                    what,
                    read.source().file(),
                    read.exists() ? Optional.of(read.source().text()) : Optional.empty(),
                    written.now().mark()));
            watch.look();
        }
        return outcome;
    }

    /** Takes the last change back; the words say what happened. */
    synchronized String undo() {
        Change last = done.peek();
        if (last == null) {
            return "There is nothing to take back.";
        }
        MachineText.Outcome outcome = MachineText.restore(watch.folder(), last.file(), last.mark(), last.before());
        if (outcome instanceof MachineText.Written) {
            done.pop();
            watch.look();
            return "Taken back: " + last.what() + ".";
        }
        done.clear();
        return last.file() + " was changed elsewhere since; nothing was taken back.";
    }

    /** What would be taken back next. */
    synchronized Optional<String> next() {
        return Optional.ofNullable(done.peek()).map(Change::what);
    }
}
