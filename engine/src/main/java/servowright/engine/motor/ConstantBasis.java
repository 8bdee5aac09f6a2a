package servowright.engine.motor;

import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.VoltageBasis;

/**
 * The basis of a motor constant, and with it the factor between the constant and the one number behind all of them, pole
 * pairs times flux linkage (phase peak): figure = factor x p x λ.
 *
 * <p>Voltage bases, for sinusoidal back-EMF e = p λ ω: phase peak 1, phase RMS 1/√2, line peak √3, line RMS √(3/2),
 * six-step 3√3/π (the mean of a line voltage over the 60 degrees around its crest is 3/π of the crest).
 *
 * <p>Current bases, from the air-gap power T ω = (3/2) e i_q: per q-axis ampere 3/2, per phase RMS ampere 3/√2, per
 * six-step ampere 3√3/π (two phases carry the direct current, so T ω = mean line voltage x I).
 *
 * <p><b>Valid for</b> sinusoidal back-EMF; {@link Waveform} gives the departures of a trapezoid. <b>Source.</b> Derived
 * above from the power balance; amplitude-invariant form as in Krause, Wasynczuk, Sudhoff, Pekarek, Analysis of Electric
 * Machinery and Drive Systems, 3rd ed. 2013, ch. 4 (recalled).
 */
public sealed interface ConstantBasis {

    /** The constant divided by pole pairs times flux linkage (phase peak). */
    double perFlux();

    /** The words people write in square brackets behind the figure. */
    String words();

    /** Basis of an EMF constant, a speed constant or a flux linkage. */
    record Voltage(VoltageBasis basis) implements ConstantBasis {
        @Override
        public double perFlux() {
            return switch (basis) {
                case LINE_PEAK -> Math.sqrt(3);
                case LINE_RMS -> Math.sqrt(1.5);
                case PHASE_PEAK -> 1;
                case PHASE_RMS -> Math.sqrt(0.5);
                case SIX_STEP -> SIX_STEP_PER_FLUX;
            };
        }

        @Override
        public String words() {
            return basis.words();
        }
    }

    /** Basis of a torque constant. */
    record Current(CurrentBasis basis) implements ConstantBasis {
        /** Refuses the supply current, which is no motor current: its ratio to torque changes with speed. */
        public Current {
            if (basis == CurrentBasis.SUPPLY) {
                throw new IllegalArgumentException("a torque constant per supply ampere does not exist: the supply "
                        + "current depends on speed as well as on torque");
            }
        }

        @Override
        public double perFlux() {
            return switch (basis) {
                case Q_AXIS -> 1.5;
                case PHASE_RMS -> 3 / Math.sqrt(2);
                case SIX_STEP -> SIX_STEP_PER_FLUX;
                case SUPPLY -> throw new IllegalStateException("refused by the constructor");
            };
        }

        @Override
        public String words() {
            return basis.words();
        }
    }

    /** 3√3/π, the same for voltage and current: six-step commutation is the direct-current machine's convention. */
    double SIX_STEP_PER_FLUX = 3 * Math.sqrt(3) / Math.PI;

    /** The basis of an EMF constant, a speed constant or a flux linkage. */
    static ConstantBasis of(VoltageBasis basis) {
        return new Voltage(basis);
    }

    /** The basis of a torque constant. */
    static ConstantBasis of(CurrentBasis basis) {
        return new Current(basis);
    }
}
