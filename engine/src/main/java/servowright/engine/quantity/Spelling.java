package servowright.engine.quantity;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word someone probably meant. */
public final class Spelling {
    private Spelling() {}

    /**
     * The known word nearest to {@code word}: at most a third of its letters away (at least one), or one that starts
     * with it.
     */
    public static Optional<String> nearest(String word, Collection<String> known) {
        String given = word.toLowerCase(Locale.ROOT);
        int most = Math.max(1, given.length() / 3);
        return known.stream()
                .filter(k -> distance(given, k.toLowerCase(Locale.ROOT)) <= most
                        || (given.length() >= 3 && k.toLowerCase(Locale.ROOT).startsWith(given)))
                .min(Comparator.<String>comparingInt(k -> distance(given, k.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /**
     * Edits (insert, delete, replace, swap of neighbours) between two words: the optimal string alignment distance.
     */
    public static int distance(String a, String b) {
        int[] before = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int k = 0; k <= b.length(); k++) {
            last[k] = k;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int k = 1; k <= b.length(); k++) {
                int replace = last[k - 1] + (a.charAt(i - 1) == b.charAt(k - 1) ? 0 : 1);
                row[k] = Math.min(replace, Math.min(last[k], row[k - 1]) + 1);
                if (i > 1 && k > 1 && a.charAt(i - 1) == b.charAt(k - 2) && a.charAt(i - 2) == b.charAt(k - 1)) {
                    row[k] = Math.min(row[k], before[k - 2] + 1);
                }
            }
            int[] free = before;
            before = last;
            last = row;
            row = free;
        }
        return last[b.length()];
    }
}
