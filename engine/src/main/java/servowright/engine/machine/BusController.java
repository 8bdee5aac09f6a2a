package servowright.engine.machine;

import servowright.engine.known.Place;

/** The bus controller of a node, as it is set. */
public record BusController(String node, Place place, Figures<ControllerFigure> figures) {}
