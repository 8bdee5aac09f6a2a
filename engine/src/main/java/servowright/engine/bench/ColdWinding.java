package servowright.engine.bench;

import servowright.engine.known.Known;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;

/** A phase resistance as it would be with the winding at 20 degC. */
final class ColdWinding {
    static final double TWENTY_CELSIUS_KELVIN = 293.15;

    private ColdWinding() {}

    /**
     * Takes a measured resistance to 20 degC and writes it down.
     *
     * @param warm   as measured
     * @param kelvin temperature of the winding meanwhile
     */
    static Known resistance(Working.Sheet working, Known warm, Known kelvin) {
        return resistance(
                working,
                "phase resistance, winding at 20 degC",
                "annealed copper of 100 % IACS; IEC 60034-1 takes 235",
                warm,
                kelvin);
    }

    static Known resistance(Working.Sheet working, String label, String source, Known warm, Known kelvin) {
        return working.line(
                label,
                "{R20} = {R} · (234.5 + 20) / (234.5 + {t})",
                "mohm",
                Dimension.RESISTANCE,
                source,
                v -> WindingResistance.atTemperature(v[0], v[1], TWENTY_CELSIUS_KELVIN, Conductor.COPPER_IACS),
                Term.of("R", warm, "mohm"),
                Term.of("t", kelvin, "degC"));
    }
}
