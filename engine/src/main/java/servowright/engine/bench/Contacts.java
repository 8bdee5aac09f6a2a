package servowright.engine.bench;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import servowright.engine.quantity.HookUp;

/**
 * Where a winding was contacted. Terminals are called A, B, C; U, V, W and 1, 2, 3 mean the same.
 *
 * @param first  terminal the signal counts positive at, 0 to 2
 * @param second the other terminal; of one against two joined and of the star point the same as {@code first}
 */
public record Contacts(int first, int second, HookUp hookUp) {
    private static final Pattern TEXT = Pattern.compile(
            "(?<![a-z0-9])([abcuvw123])\\s*(?:to|against|-|\u2013|\u2192)\\s*(star|[abcuvw123]{1,2})(?![a-z0-9])");

    @Override
    public int hashCode() {
        return 3 * first + second;
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Contacts contacts
                        && first == contacts.first
                        && second == contacts.second
                        && hookUp == contacts.hookUp);
    }

    /** Finds contacts in words like {@code A to B}, {@code A to BC}, {@code current A to star}. */
    public static Optional<Contacts> parse(String text) {
        Matcher m = TEXT.matcher(text.toLowerCase(Locale.ROOT));
        if (!m.find()) {
            return Optional.empty();
        }
        int first = terminal(m.group(1).charAt(0));
        String other = m.group(2);
        if (other.equals("star")) {
            return Optional.of(new Contacts(first, first, HookUp.PHASE));
        }
        int second = terminal(other.charAt(0));
        if (other.length() == 1) {
            return first == second ? Optional.empty() : Optional.of(new Contacts(first, second, HookUp.TWO_TERMINALS));
        }
        boolean allThree = first + second + terminal(other.charAt(1)) == 3 && first != second;
        return allThree ? Optional.of(new Contacts(first, first, HookUp.ONE_AGAINST_TWO)) : Optional.empty();
    }

    /** Whether the pair was contacted against its usual sense A to B, B to C, C to A. */
    public boolean reversed() {
        return hookUp == HookUp.TWO_TERMINALS && second != (first + 1) % 3;
    }

    /** The same contacts in their usual sense: a pair read the other way round is the same pair. */
    public Contacts usual() {
        return reversed() ? new Contacts(index(), (index() + 1) % 3, hookUp) : this;
    }

    /** Which of the three pairs or phases it is, 0 to 2: the pair A to B counts as 0. */
    public int index() {
        return reversed() ? second : first;
    }

    /** As it is written, in its usual sense. */
    public String words() {
        char from = (char) ('A' + index());
        char next = (char) ('A' + (index() + 1) % 3);
        char last = (char) ('A' + (index() + 2) % 3);
        return switch (hookUp) {
            case TWO_TERMINALS -> from + " to " + next;
            case ONE_AGAINST_TWO -> from + " to " + (char) Math.min(next, last) + (char) Math.max(next, last);
            case PHASE -> from + " to star";
        };
    }

    private static int terminal(char name) {
        return "abcuvw123".indexOf(name) % 3;
    }
}
