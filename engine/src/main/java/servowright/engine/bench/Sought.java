package servowright.engine.bench;

/** A figure that a bench test can give, on one fixed basis. */
public interface Sought {
    Caption caption();

    /** As it is shown. */
    default String words() {
        return caption().words();
    }

    /** Its symbol in formulas. */
    default String symbol() {
        return caption().symbol();
    }

    /** Unit to show it in; empty for a pure number. */
    default String unit() {
        return caption().unit();
    }

    /** What would give a value. */
    default String settle() {
        return caption().settle();
    }
}
