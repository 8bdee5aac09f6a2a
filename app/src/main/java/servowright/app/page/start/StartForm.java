package servowright.app.page.start;

import java.util.List;
import java.util.Map;
import servowright.engine.known.Problem;

/**
 * A folder without a machine: what it may become.
 *
 * @param folder   where it would be written
 * @param said     answers so far
 * @param problems with them
 * @param notice   what else is to be said; may be empty
 */
public record StartForm(String folder, Map<String, String> said, List<Problem> problems, String notice) {
    /**
     * A question.
     *
     * @param within part of the path of a problem that belongs to it
     */
    public record Field(String key, String question, String how, String within) {}

    private static final List<Field> FIELDS = List.of(
            new Field("machine", "What is the machine called?", "for example Orchard rig", "machine"),
            new Field("axes", "Which axes does it have?", "a name each: pan, tilt, lift", "axes"),
            new Field("supply", "What voltage feeds it?", "24 V, or from empty to full: 20..29.2 V", "supply /"),
            new Field("motor", "What do you call its motor?", "any short name; further motors can follow", "motors"),
            new Field(
                    "magnets",
                    "How many magnets has the rotor?",
                    "counted; half of them are the pole pairs",
                    "/ magnets"),
            new Field(
                    "speed_constant",
                    "What speed constant is on the label?",
                    "with how it is stated, if the maker says: 42 rpm/V [line peak, label]",
                    "/ speed_constant"),
            new Field(
                    "resistance",
                    "What resistance is on the label?",
                    "0.24 ohm [two terminals, 20 degC, label]",
                    "/ resistance"),
            new Field("drive", "What do you call its drive?", "any short name", "drives"),
            new Field("takes", "What voltage does the drive take?", "12..34 V", "/ voltage"),
            new Field("current", "What current does the drive give for long?", "6 A [q axis]", "/ continuous"),
            new Field("rate", "How fast is the bus?", "1 Mbit/s", "bus /"));

    public StartForm {
        said = Map.copyOf(said);
        problems = List.copyOf(problems);
    }

    public List<Field> fields() {
        return FIELDS;
    }

    public String value(String key) {
        return said.getOrDefault(key, "");
    }

    /** What is wrong with one answer. */
    public List<Problem> wrong(Field field) {
        return problems.stream().filter(p -> place(p).equals(field)).toList();
    }

    /** What is wrong with none in particular. */
    public List<Problem> others() {
        return problems.stream()
                .filter(p -> FIELDS.stream().noneMatch(f -> place(p).equals(f)))
                .toList();
    }

    /** The question a problem belongs to: the last that fits, since part names stand before their figures. */
    private static Field place(Problem problem) {
        Field found = new Field("", "", "", "");
        for (Field field : FIELDS) {
            boolean drive = problem.place().path().startsWith("drives");
            boolean fits = problem.place().path().contains(field.within());
            if (fits
                    && (!field.key().equals("supply") || !drive)
                    && (!field.key().equals("takes") || drive)) {
                found = field;
            }
        }
        return found;
    }
}
