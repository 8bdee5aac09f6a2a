package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Heat in a three-phase MOSFET bridge with sinusoidal current.
 *
 * <p><b>Formulas.</b> Conduction (3/2) R_on i²; switching (6/π) E f with E the energy of one on and off at the peak
 * current, taken proportional to current; diodes in the dead time 3 · 2 t_d f V_f (2/π) i. <b>Valid for</b> MOSFETs that
 * conduct in both directions; gate drive and ripple are not in it. <b>Source.</b> Averages over a sine, derived.
 *
 * @param conductionWatt both switches of all legs, one of which always conducts
 * @param switchingWatt  edges
 * @param diodeWatt      body diodes in the dead time
 */
public record BridgeLoss(double conductionWatt, double switchingWatt, double diodeWatt) {

    /**
     * The switches of a bridge and how they are driven.
     *
     * @param onOhm          resistance of one switch, warm
     * @param edgeJoule      energy of switching on and off once at {@code atAmp}
     * @param atAmp          current at which that energy was given
     * @param diodeVolt      forward drop of the body diode
     * @param deadSecond     dead time
     * @param switchingHertz switching frequency
     */
    public record Switches(
            double onOhm, double edgeJoule, double atAmp, double diodeVolt, double deadSecond, double switchingHertz) {
        /** Refuses figures no bridge can have. */
        public Switches {
            Require.notNegative("switch resistance", onOhm, "ohm");
            Require.notNegative("switching energy", edgeJoule, "J");
            Require.positive("current of the switching energy", atAmp, "A");
            Require.notNegative("diode drop", diodeVolt, "V");
            Require.notNegative("dead time", deadSecond, "s");
            Require.positive("switching frequency", switchingHertz, "Hz");
        }
    }

    /** Loss at a phase current, peak. */
    public static BridgeLoss of(Switches switches, double phasePeakAmp) {
        Require.notNegative("phase current (peak)", phasePeakAmp, "A");
        double energy = switches.edgeJoule() * phasePeakAmp / switches.atAmp();
        return new BridgeLoss(
                1.5 * switches.onOhm() * phasePeakAmp * phasePeakAmp,
                6 / Math.PI * energy * switches.switchingHertz(),
                12 / Math.PI * switches.deadSecond() * switches.switchingHertz() * switches.diodeVolt() * phasePeakAmp);
    }

    /** All of it. */
    public double totalWatt() {
        return conductionWatt + switchingWatt + diodeWatt;
    }
}
