package servowright.engine.machine;

import servowright.engine.known.Place;

/** One thing an axis must do over time, in figures of its output. */
public record Duty(String name, Place place, Profile profile, Figures<DutyFigure> figures) {}
