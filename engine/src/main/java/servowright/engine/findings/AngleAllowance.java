package servowright.engine.findings;

import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/**
 * How large an angle may be: nobody notices it up to one size, and it must not pass another.
 *
 * @param comfortable up to here it holds
 * @param most        beyond it fails
 */
record AngleAllowance(Known comfortable, Known most) {
    private static final String UNIT = "deg";

    /** Both by common practice. */
    static AngleAllowance ofDegrees(double comfortable, double most) {
        return new AngleAllowance(practice(comfortable), practice(most));
    }

    private static Known practice(double degrees) {
        return Known.exact(Quantity.of(degrees, UNIT), Origin.ASSUMED, "common practice");
    }

    /**
     * The verdict on an angle.
     *
     * @param statement says the angle, and may name {comfortable} and {most}
     */
    Draft judged(Rule rule, String subject, Known angle, Phrase statement) {
        return Draft.of(rule, subject)
                .verdict(Judge.atMost(angle, most, comfortable).verdict())
                .says(named(named(statement, "comfortable", comfortable), "most", most))
                .atMost(angle, most, UNIT);
    }

    private static Phrase named(Phrase statement, String name, Known limit) {
        return statement.template().contains("{" + name + "}") ? statement.with(name, limit, UNIT) : statement;
    }
}
