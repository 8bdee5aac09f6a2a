package servowright.engine.prediction;

import java.util.OptionalInt;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.StarOfSlots;

/**
 * What slots and magnets of a motor mean together.
 *
 * @param slots   counted
 * @param poles   magnets
 * @param winding the winding they make, or why they make none
 * @param cogging detents per turn they lead to
 * @param counted detents counted by hand, if they were
 */
public record SlotsAndPoles(int slots, int poles, StarOfSlots.Result winding, Cogging cogging, OptionalInt counted) {}
