package servowright.engine.capture;

import servowright.engine.quantity.Require;

/**
 * How long a bit takes at the two rates of a bus, ns. Without rate switching both are the same.
 *
 * @param nominalNs of arbitration
 * @param dataNs of the data of frames that switch
 */
public record BitTimes(long nominalNs, long dataNs) {
    public BitTimes {
        Require.atLeast("nominal bit time in ns", 1, (int) Math.min(nominalNs, Integer.MAX_VALUE));
        Require.atLeast("data bit time in ns", 1, (int) Math.min(dataNs, Integer.MAX_VALUE));
    }

    /** The bit times of rates in bit/s. */
    public static BitTimes ofRates(double nominalPerS, double dataPerS) {
        return new BitTimes(Math.round(1e9 / nominalPerS), Math.round(1e9 / dataPerS));
    }
}
