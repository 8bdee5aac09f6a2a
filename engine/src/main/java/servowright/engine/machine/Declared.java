package servowright.engine.machine;

import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Place;
import servowright.engine.known.Source;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.StatedOrigin;

/**
 * A figure as it stands in the user's files.
 *
 * @param stated as it was written, with its basis
 * @param known  the same as an uncertain number: limits count as a rectangular distribution (JCGM 100:2008, 4.3.7)
 * @param place  where it stands
 */
public record Declared(Stated stated, Known known, Place place) {
    /** The figure with the uncertainty that its own words give it. */
    public static Declared of(Stated stated, Place place) {
        boolean limits = stated.spread() == Stated.Spread.TOLERANCE;
        double half = (stated.upper().si() - stated.lower().si()) / 2;
        double u = limits ? half / Math.sqrt(3) : 0;
        Known known = Known.of(
                stated.nominal(), u, Source.of(place.text() + " " + place.path()), origin(stated), place.text());
        return new Declared(stated, known, place);
    }

    private static Origin origin(Stated stated) {
        StatedOrigin from = stated.origin().orElse(null);
        if (from == null) {
            return Origin.DECLARED;
        }
        return switch (from) {
            case LABEL, DATA_SHEET -> Origin.DATA_SHEET;
            case MEASURED -> Origin.MEASURED;
            case GUESS -> Origin.ASSUMED;
        };
    }

    /** Value in SI. */
    public double si() {
        return known.si();
    }
}
