package servowright.engine.recording;

import java.util.Optional;
import servowright.engine.quantity.Unit;

/**
 * One recorded signal.
 *
 * <p>The array is handed over, not copied: a recording holds megabytes. Whoever gets it reads it and never writes to it.
 *
 * @param name as the file or the user calls it
 * @param unit as the file states it; empty when none is known
 * @param samples one value per row, in SI when the unit is known and as recorded (counts) when it is not; NaN where the
 *     file has no number
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, see above
public record Channel(String name, Optional<Unit> unit, double[] samples) {
    public Channel {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a channel needs a name");
        }
    }

    /** The same signal under another name. */
    public Channel named(String other) {
        return new Channel(other, unit, samples);
    }

    /** The same signal with other samples. */
    public Channel with(double[] others) {
        return new Channel(name, unit, others);
    }

    /** Smallest, largest and mean of the samples that are numbers. */
    public Spread spread() {
        return Spread.of(samples);
    }
}
