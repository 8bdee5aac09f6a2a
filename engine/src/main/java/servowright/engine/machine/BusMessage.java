package servowright.engine.machine;

import java.util.Optional;
import java.util.OptionalInt;
import servowright.engine.known.Place;

/**
 * A message that is sent besides those that every axis has, or one of those with figures of its own.
 *
 * @param name  what it is; {@code lift command} replaces the command that the axis lift would have
 * @param from  name of the node that sends it; an axis or any other name
 * @param id    identifier, if given; above 7FF it has 29 bits
 */
public record BusMessage(
        String name, Place place, Optional<String> from, OptionalInt id, Figures<MessageFigure> figures) {}
