package servowright.app.input.tree;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** Collects everything that is wrong with the input, up to a number that a person can read. */
public final class Problems {
    private static final int MOST = 100;
    private static final int LONGEST_QUOTE = 60;

    private final List<Problem> gathered = new ArrayList<>();
    private int further;

    /** Takes one problem; {@link Problem} says what its parts are. */
    public void add(Problem.Kind kind, Place place, String given, String statement, String allowed, String remedy) {
        add(new Problem(kind, place, shortened(given), statement, allowed, remedy));
    }

    /** Takes one problem. */
    public void add(Problem problem) {
        if (gathered.size() < MOST) {
            gathered.add(problem);
        } else {
            further++;
        }
    }

    /** Whether further problems are only counted. */
    public boolean full() {
        return gathered.size() >= MOST;
    }

    /** Counts a problem that nobody will read. */
    public void countOne() {
        further++;
    }

    /** Takes several. */
    public void addAll(List<Problem> problems) {
        problems.forEach(this::add);
    }

    /** Takes all that another collected, and its count of the rest. */
    public void addAll(Problems other) {
        addAll(other.gathered);
        further += other.further;
    }

    public boolean isEmpty() {
        return gathered.isEmpty();
    }

    /** How many were taken. */
    public int count() {
        return gathered.size() + further;
    }

    /** All of them, by file in the order in which the files were met, then by line. */
    public List<Problem> sorted() {
        List<String> files =
                gathered.stream().map(p -> p.place().file()).distinct().toList();
        List<Problem> sorted = new ArrayList<>(gathered);
        sorted.sort(
                Comparator.<Problem>comparingInt(p -> files.indexOf(p.place().file()))
                        .thenComparingInt(p -> p.place().line()));
        if (further > 0) {
            Place last = sorted.get(sorted.size() - 1).place();
            sorted.add(new Problem(
                    Problem.Kind.UNREADABLE,
                    new Place(last.file(), 0, ""),
                    "",
                    "there are " + further + " further problems",
                    "",
                    "Mend these first."));
        }
        return List.copyOf(sorted);
    }

    /** {@code text} in quotation marks, cut to what fits into a sentence. */
    public static String quoted(String text) {
        return "\"" + shortened(text) + "\"";
    }

    /** {@code text} in one line, cut to what fits into a sentence. */
    public static String shortened(String text) {
        if (text.length() <= LONGEST_QUOTE && text.chars().allMatch(Problems::plain)) {
            return text;
        }
        String start = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE - 3) + "..." : text;
        return start.chars()
                .map(c -> plain(c) ? c : ' ')
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** Whether a UTF-16 unit shows as one character and does not steer the ones around it. */
    public static boolean plain(int c) {
        return !Character.isISOControl(c)
                && !Character.isSurrogate((char) c)
                && Character.getType(c) != Character.FORMAT;
    }
}
