package servowright.engine.bench;

/** A figure that a bench test can give, on one fixed basis. */
public interface Sought {
    /** As it is shown. */
    String words();

    /** Its symbol in formulas. */
    String symbol();

    /** Unit to show it in; empty for a pure number. */
    String unit();

    /** What would give a value. */
    String settle();
}
