package servowright.engine.encoder;

import java.util.Optional;
import java.util.OptionalDouble;
import servowright.engine.numeric.Interval;
import servowright.engine.quantity.Require;

/** Gaps at which the field at the sensing element stays inside what the sensor works in, over lot and temperature. */
public final class GapWindow {
    private GapWindow() {}

    /**
     * The gap window, metres, from the face of the magnet to the sensing element.
     *
     * <p><b>Formula.</b> Nearest gap: B(g) of the strongest magnet at its strongest temperature equals the greatest field;
     * farthest: B(g) of the weakest at its weakest equals the least, with B(g) of {@link AxisField}. <b>Validity.</b> No
     * iron near: a share below 1 of the field stands for what iron takes away, alike at both ends. A magnet that never
     * reaches the greatest field may come as near as 0. Empty when no gap serves every magnet at every temperature.
     *
     * @param remanenceTesla from the weakest magnet at its weakest to the strongest at its strongest, see
     *     {@link Remanence#overCelsius}
     * @param fieldTesla what the sensor works in
     * @param fieldShare field that is left beside iron over that without, 1 with none
     */
    public static Optional<Interval> metre(
            RoundMagnet magnet, Interval remanenceTesla, Interval fieldTesla, double fieldShare) {
        Require.positive("least field", fieldTesla.low(), "T");
        Require.within("share of the field", 1e-3, 10, fieldShare, "");
        double nearest = magnet.widestGapMetre(fieldShare * remanenceTesla.high(), fieldTesla.high())
                .orElse(0);
        OptionalDouble farthest = magnet.widestGapMetre(fieldShare * remanenceTesla.low(), fieldTesla.low());
        return farthest.isPresent() && farthest.getAsDouble() >= nearest
                ? Optional.of(new Interval(nearest, farthest.getAsDouble()))
                : Optional.empty();
    }
}
