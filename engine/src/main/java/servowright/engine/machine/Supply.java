package servowright.engine.machine;

import servowright.engine.known.Place;

/** What feeds the machine, as declared. */
public record Supply(SupplyKind kind, Place place, Figures<SupplyFigure> figures) {}
