package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * A magnet on a shaft and a sensor before its face, with all that may sit askew.
 *
 * <p>Fixed frame: z is the axis of rotation, the sensor is at positive z. Frame of the shaft: turns with it; at shaft angle
 * 0 it is the fixed frame, and the magnetisation lies along its x axis. A tilt is the angle by which an axis leans, towards
 * the direction it leans to; the magnet tilts about its centre, the sensor about its sensing point.
 *
 * @param magnet size
 * @param remanenceTesla strength of its magnetisation
 * @param elevationRad angle by which the magnetisation rises out of the plane of the magnet towards the sensor; π/2 is an
 *     axial magnet
 * @param gapMetre from the face of the magnet to the sensing element, along the axis, with no tilt
 * @param sensorOffset of the sensing point from the axis, metres, in the fixed frame
 * @param magnetOffset of the centre of the magnet from the axis, metres, in the frame of the shaft
 * @param sensorTilt lean of the normal of the sensor, radians, in the fixed frame
 * @param magnetTilt lean of the axis of the magnet, radians, in the frame of the shaft
 */
public record Assembly(
        RoundMagnet magnet,
        double remanenceTesla,
        double elevationRad,
        double gapMetre,
        Planar sensorOffset,
        Planar magnetOffset,
        Planar sensorTilt,
        Planar magnetTilt) {

    public Assembly {
        Require.positive("remanence", remanenceTesla, "T");
        Require.within("elevation of the magnetisation", -Math.PI / 2, Math.PI / 2, elevationRad, "rad");
        Require.positive("gap", gapMetre, "m");
        Require.finite("misplacement", sensorOffset.length() + magnetOffset.length(), "m");
        Require.within("tilt", 0, Math.PI / 2, Math.max(sensorTilt.length(), magnetTilt.length()), "rad");
    }

    /** Everything where it should be. */
    public static Assembly centred(RoundMagnet magnet, double remanenceTesla, double gapMetre) {
        return new Assembly(magnet, remanenceTesla, 0, gapMetre, Planar.ZERO, Planar.ZERO, Planar.ZERO, Planar.ZERO);
    }

    public Assembly withElevation(double rad) {
        return new Assembly(magnet, remanenceTesla, rad, gapMetre, sensorOffset, magnetOffset, sensorTilt, magnetTilt);
    }

    public Assembly withOffsets(Planar sensorMetre, Planar magnetMetre) {
        return new Assembly(
                magnet, remanenceTesla, elevationRad, gapMetre, sensorMetre, magnetMetre, sensorTilt, magnetTilt);
    }

    public Assembly withTilts(Planar sensorRad, Planar magnetRad) {
        return new Assembly(
                magnet, remanenceTesla, elevationRad, gapMetre, sensorOffset, magnetOffset, sensorRad, magnetRad);
    }

    /**
     * What the sensor reads over one turn, with the full field in space.
     *
     * <p><b>Validity.</b> Any offset and tilt that keeps the sensing elements off the mantle of the magnet. <b>Source.</b>
     * {@link RoundMagnet#fieldTesla}, turned and tilted exactly.
     */
    public FullTurn turn(Sensing sensing, int angles) {
        Scene scene = new Scene(this);
        return FullTurn.of(shaft -> scene.phasor(sensing, shaft), angles);
    }

    /**
     * Angle error of a point sensor to second order in everything askew, mean included: {@link SecondOrder}.
     *
     * @param angles number of angles among which the peak is sought
     */
    public AngleError secondOrder(int angles) {
        Require.atLeast("number of angles", 5, angles);
        return SecondOrder.of(
                        magnet.onAxis(remanenceTesla, gapMetre),
                        sensorOffset,
                        magnetOffset,
                        sensorTilt,
                        magnetTilt,
                        elevationRad)
                .error(new SecondOrder.Round(angles));
    }

    /** The assembly with its rotations worked out. */
    private static final class Scene {
        private final RoundMagnet magnet;
        private final Vector polarisation;
        private final Vector sensor;
        private final Vector magnetShift;
        private final Lean sensorLean;
        private final Lean magnetLean;

        Scene(Assembly assembly) {
            magnet = assembly.magnet;
            polarisation = new Vector(Math.cos(assembly.elevationRad), 0, Math.sin(assembly.elevationRad))
                    .times(assembly.remanenceTesla);
            double height = magnet.lengthMetre() / 2 + assembly.gapMetre;
            sensor = new Vector(assembly.sensorOffset.x(), assembly.sensorOffset.y(), height);
            magnetShift = new Vector(assembly.magnetOffset.x(), assembly.magnetOffset.y(), 0);
            sensorLean = Lean.towards(assembly.sensorTilt);
            magnetLean = Lean.towards(assembly.magnetTilt);
        }

        Planar phasor(Sensing sensing, double shaftRad) {
            double cosine = Math.cos(shaftRad);
            double sine = Math.sin(shaftRad);
            return sensing.phasor(place -> fieldInSensor(place, cosine, sine));
        }

        private Vector fieldInSensor(Vector place, double cosine, double sine) {
            Vector fixed = sensor.plus(sensorLean.upright(place));
            Vector inMagnet = magnetLean.tipped(fixed.turned(cosine, -sine).minus(magnetShift));
            Vector field = magnetLean.upright(magnet.fieldTesla(polarisation, inMagnet));
            return sensorLean.tipped(field.turned(cosine, sine));
        }
    }
}
