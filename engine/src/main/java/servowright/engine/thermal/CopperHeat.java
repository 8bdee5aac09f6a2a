package servowright.engine.thermal;

import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/**
 * One thermal resistance between winding and surroundings, with copper whose resistance grows as it warms.
 *
 * <p><b>Formula.</b> P(T) = P₀ [1 + α (T − T₀)] and T = T_a + R_th P(T), hence T = [T_a + R_th P₀ (1 − α T₀)] /
 * (1 − α R_th P₀), temperatures counted on one scale. At P₀ = 1/(α R_th) there is no answer: the winding runs away.
 * <b>Valid for</b> settled heat and constant current. R_th in data sheets is often given with the motor on a metal plate:
 * without it twice as much is usual (common practice, no source). <b>Source.</b> Heat balance, derived.
 *
 * @param ambientKelvin   temperature of the surroundings
 * @param kelvinPerWatt   R_th from winding to surroundings
 * @param referenceKelvin T₀ at which the loss is given
 * @param perKelvin       α, relative rise of resistance per kelvin at T₀; copper 0.00393 at 293.15 K
 */
public record CopperHeat(double ambientKelvin, double kelvinPerWatt, double referenceKelvin, double perKelvin) {

    /** Refuses figures no motor can have. */
    public CopperHeat {
        Require.positive("ambient temperature", ambientKelvin, "K");
        Require.positive("thermal resistance", kelvinPerWatt, "K/W");
        Require.positive("reference temperature", referenceKelvin, "K");
        Require.notNegative("temperature coefficient", perKelvin, "1/K");
    }

    /**
     * Settled winding temperature in kelvin; empty if it runs away.
     *
     * @param referenceWatt copper loss at the reference temperature
     */
    public OptionalDouble settledKelvin(double referenceWatt) {
        Require.notNegative("copper loss at reference temperature", referenceWatt, "W");
        double feedback = perKelvin * kelvinPerWatt * referenceWatt;
        if (feedback >= 1) {
            return OptionalDouble.empty();
        }
        double rise = kelvinPerWatt * referenceWatt * resistanceFactor(ambientKelvin) / (1 - feedback);
        return OptionalDouble.of(ambientKelvin + rise);
    }

    /** Loss at the reference temperature from which on the winding runs away, 1/(α R_th), W; empty without feedback. */
    public OptionalDouble runawayWatt() {
        return perKelvin > 0 ? OptionalDouble.of(1 / (perKelvin * kelvinPerWatt)) : OptionalDouble.empty();
    }

    /** Resistance at a temperature over that at the reference, 1 + α (T − T₀). */
    public double resistanceFactor(double kelvin) {
        double factor = 1 + perKelvin * (Require.positive("temperature", kelvin, "K") - referenceKelvin);
        return Require.positive("resistance factor", factor, "");
    }

    /**
     * What a motor can give for ever.
     *
     * @param lossWatt          heat that may flow, (T_max − T_a) / R_th
     * @param phasePeakAmp      current with that copper loss in the warm winding, √(P / (1.5 R_warm))
     * @param torqueNewtonMetre torque at that current with the warm torque constant
     */
    public record Continuous(double lossWatt, double phasePeakAmp, double torqueNewtonMetre) {}

    /**
     * Continuous torque from copper heat.
     *
     * @param limitKelvin             highest winding temperature, above ambient
     * @param referencePhaseOhm       phase resistance at the reference temperature
     * @param warmNewtonMetrePerAmp   torque per q-axis ampere with warm magnets
     * @param otherWatt               loss that does not come from the current (iron, friction), at the speed in question
     */
    public Continuous continuous(
            double limitKelvin, double referencePhaseOhm, double warmNewtonMetrePerAmp, double otherWatt) {
        Require.positive("temperature limit above ambient", limitKelvin - ambientKelvin, "K");
        Require.positive("phase resistance", referencePhaseOhm, "ohm");
        Require.positive("torque per q-axis ampere", warmNewtonMetrePerAmp, "N m/A");
        Require.notNegative("other loss", otherWatt, "W");
        double loss = (limitKelvin - ambientKelvin) / kelvinPerWatt;
        double copper = Math.max(0, loss - otherWatt);
        double amp = Math.sqrt(copper / (1.5 * referencePhaseOhm * resistanceFactor(limitKelvin)));
        return new Continuous(loss, amp, warmNewtonMetrePerAmp * amp);
    }

    /**
     * Share of the continuous current that is left at standstill, if the worst phase must not get hotter than the mean
     * does when turning: 1/√2. The phase that carries the peak heats with i² R, twice its share when turning. Heat that
     * spreads between the phases makes it better.
     */
    public static double standstillShare() {
        return Math.sqrt(0.5);
    }
}
