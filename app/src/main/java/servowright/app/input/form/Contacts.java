package servowright.app.input.form;

/** How people say where an instrument was connected. */
final class Contacts {
    private static final String TERMINAL = "[ABCUVWabcuvw123]";
    private static final String TWO = TERMINAL + "\\s*(?:to|against|-|\u2013|\u2192)\\s*(?:star|" + TERMINAL + "{1,2})";

    /** Two contacts of a motor; {@code BC} are two terminals joined. */
    static final String PAIR = TWO;

    /** What a channel can show: two contacts, what is measured there, and on which axis of the rotor. */
    static final String CHANNEL = "(?:(?:" + TWO + "|voltage|current " + TERMINAL
            + "(?=,|\\s|$)|current|shunt|applied|supply|speed|frequency|commanded angle"
            + "|reference angle|angle|field|torque|force"
            + "|temperature|housing|cosine|sine|input|output|power|event|resistance|divider|time|trigger|index|unused|phase rms|six-step|[dq] axis)(?:,\\s*|\\s+|$))+";

    private Contacts() {}
}
