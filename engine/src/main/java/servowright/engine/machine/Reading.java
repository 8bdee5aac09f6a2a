package servowright.engine.machine;

import servowright.engine.known.Place;

/**
 * One reading taken at the bench.
 *
 * @param contacts where it was taken: {@code A to B}, {@code A to BC}, {@code A to star}; empty when not said
 */
public record Reading(Place place, String contacts, Figures<ReadingFigure> figures) {}
