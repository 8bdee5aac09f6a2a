package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Bounds on what nearby soft iron does to the field at the sensor, by images and dipoles. Real parts are finite and less
 * permeable and do less; a part that is magnetised itself acts like a stray field and is not covered.
 */
public final class IronBound {
    private IronBound() {}

    /**
     * Relative change of the field when a steel plane stands behind the magnet, parallel to its face, below 0.
     *
     * <p><b>Formula.</b> Image with reversed transverse magnetisation at twice the distance: −B(g + L + 2d)/B(g).
     * <b>Validity.</b> Upper bound: infinite plane and permeability. No angle error, for the plane is round about the axis.
     * <b>Source.</b> Method of images, derived.
     *
     * @param distanceMetre from the far face of the magnet to the steel, 0 for a magnet glued onto it
     */
    public static double behindMagnet(RoundMagnet magnet, double gapMetre, double distanceMetre) {
        Require.notNegative("distance to the steel", distanceMetre, "m");
        return -share(magnet, gapMetre, gapMetre + magnet.lengthMetre() + 2 * distanceMetre);
    }

    /**
     * Relative change of the field when a steel plane stands behind the sensor: −B(g + 2s)/B(g), see
     * {@link #behindMagnet}.
     *
     * @param distanceMetre from the sensing element to the steel
     */
    public static double behindSensor(RoundMagnet magnet, double gapMetre, double distanceMetre) {
        Require.notNegative("distance to the steel", distanceMetre, "m");
        return -share(magnet, gapMetre, gapMetre + 2 * distanceMetre);
    }

    private static double share(RoundMagnet magnet, double gap, double imageGap) {
        return magnet.onAxis(1, imageGap).strengthTesla()
                / magnet.onAxis(1, gap).strengthTesla();
    }

    /**
     * Second harmonic of the angle that one stationary screw causes in a centred sensor, radians.
     *
     * <p><b>Formula.</b> The head as a sphere of radius a in the field B of the magnet becomes a dipole μ0 m = 4π a³ B; its
     * field at the sensor adds an ellipse to the circle, and H2 = |c₋₁/c₁| of the phasor. Falls with about the sixth power
     * of the distance. <b>Validity.</b> Upper bound for soft iron: permeability infinite, field even over the sphere,
     * a well below the distance. <b>Source.</b> Induced dipole of a sphere, J. D. Jackson, Classical Electrodynamics,
     * section 5.11 (recalled).
     *
     * @param headRadiusMetre radius of a sphere about as large as the screw head
     * @param fromAxisMetre lateral distance of the screw
     * @param beyondSensorMetre how far its centre lies behind the plane of the sensing element, seen from the magnet
     */
    public static double screwSecondHarmonicRad(
            RoundMagnet magnet,
            double gapMetre,
            double headRadiusMetre,
            double fromAxisMetre,
            double beyondSensorMetre) {
        Require.notNegative("radius of the screw head", headRadiusMetre, "m");
        Require.positive("distance of the screw from the axis", fromAxisMetre, "m");
        Require.finite("height of the screw beyond the sensor", beyondSensorMetre, "m");
        Vector sensor = new Vector(0, 0, magnet.lengthMetre() / 2 + gapMetre);
        Vector screw = new Vector(fromAxisMetre, 0, sensor.z() + beyondSensorMetre);
        Planar whenAlong = atSensor(magnet, new Vector(1, 0, 0), sensor, screw, headRadiusMetre);
        Planar whenAcross = atSensor(magnet, new Vector(0, 1, 0), sensor, screw, headRadiusMetre);
        // The response is linear in the magnetisation, so two directions give both turning parts of the phasor.
        Planar turnedBack = new Planar(whenAcross.y(), -whenAcross.x());
        double with = whenAlong.plus(turnedBack).length();
        double against = whenAlong.minus(turnedBack).length();
        return Math.asin(Math.min(1, against / with));
    }

    private static Planar atSensor(
            RoundMagnet magnet, Vector polarisation, Vector sensor, Vector screw, double headRadius) {
        Vector own = magnet.fieldTesla(polarisation, sensor);
        Vector moment = magnet.fieldTesla(polarisation, screw).times(Math.pow(headRadius, 3));
        Vector away = sensor.minus(screw);
        double distance = away.length();
        Vector along = away.times(3 * moment.dot(away) / (distance * distance));
        return own.plus(along.minus(moment).times(Math.pow(distance, -3))).across();
    }
}
