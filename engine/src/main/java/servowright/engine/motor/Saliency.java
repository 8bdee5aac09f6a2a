package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * Inductances on the two axes of the rotor.
 *
 * <p><b>Model.</b> Between two terminals L(θ) = (L_d + L_q) + (L_d − L_q) cos(2θ + φ), with φ = 60° for ab, 180° for bc
 * and −60° for ca, θ the electrical angle of the magnet north pole from the axis of phase a. So the least reading is
 * 2 L_d and the largest 2 L_q when L_q is the larger, as it is with magnets in or on the rotor.
 *
 * <p><b>Valid for</b> unsaturated iron and a sinusoidal dependence on the angle. An LCR meter reads the incremental
 * value at its small signal, with iron loss in it. <b>Source.</b> Inductance matrix of the salient machine in rotor axes,
 * derived; as in Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric Machinery and Drive Systems, 3rd ed. 2013
 * (recalled).
 *
 * @param dHenry        inductance on the magnet axis, the smaller
 * @param qHenry        inductance between the magnets, the larger
 * @param electricalRad electrical angle of the magnet axis from phase a, from 0 to below π: it cannot tell north from
 *                      south
 */
public record Saliency(double dHenry, double qHenry, double electricalRad) {

    /** Refuses negative inductances: readings that no winding can show. */
    public Saliency {
        Require.positive("d inductance", dHenry, "H");
        Require.positive("q inductance", qHenry, "H");
        Require.finite("electrical angle", electricalRad, "rad");
    }

    /**
     * From the three pairs of terminals at one rotor position, which need not be known.
     *
     * <p><b>Formula.</b> m = (ab + bc + ca)/3, A = (2/3) √(ab² + bc² + ca² − ab bc − bc ca − ca ab), L_d = (m − A)/2,
     * L_q = (m + A)/2; the angle from the first harmonic of the three readings over φ.
     */
    public static Saliency fromThreePairs(double abHenry, double bcHenry, double caHenry) {
        Require.positive("inductance a to b", abHenry, "H");
        Require.positive("inductance b to c", bcHenry, "H");
        Require.positive("inductance c to a", caHenry, "H");
        double mean = (abHenry + bcHenry + caHenry) / 3;
        // Sums over φ = 60°, 180°, −60°: −(3/2) A cos 2θ and +(3/2) A sin 2θ.
        double cosine = (abHenry + caHenry) / 2 - bcHenry;
        double sine = Math.sqrt(0.75) * (abHenry - caHenry);
        double half = Math.hypot(cosine, sine) / 3;
        return new Saliency(mean / 2 - half, mean / 2 + half, axisAngle(sine, -cosine));
    }

    /** Inductance a meter shows between two terminals. */
    public double betweenTerminalsHenry(TerminalPair pair, double rotorElectricalRad) {
        return dHenry + qHenry + (dHenry - qHenry) * Math.cos(2 * rotorElectricalRad + pair.phaseRad());
    }

    /**
     * Inductance a meter shows from one terminal to the two others joined, by rotor angle from that phase's axis:
     * (3/2) [L_d cos² θ + L_q sin² θ]; 3/2 L_d with the magnet on the axis, 3/2 L_q across it.
     */
    public double oneAgainstTwoHenry(double rotorElectricalRadFromPhase) {
        double cos = Math.cos(rotorElectricalRadFromPhase);
        double sin = Math.sin(rotorElectricalRadFromPhase);
        return 1.5 * (dHenry * cos * cos + qHenry * sin * sin);
    }

    /** L_q over L_d. */
    public double ratio() {
        return qHenry / dHenry;
    }

    /** Angle of the magnet axis from the sine and cosine of twice the angle, folded into 0 to π. */
    static double axisAngle(double sine, double cosine) {
        double angle = Math.atan2(sine, cosine) / 2;
        return angle < 0 ? angle + Math.PI : angle;
    }

    /** Two terminals of the three. */
    public enum TerminalPair {
        AB(Math.PI / 3),
        BC(Math.PI),
        CA(-Math.PI / 3);

        private final double phaseRad;

        TerminalPair(double phaseRad) {
            this.phaseRad = phaseRad;
        }

        /** φ of the model. */
        public double phaseRad() {
            return phaseRad;
        }
    }
}
