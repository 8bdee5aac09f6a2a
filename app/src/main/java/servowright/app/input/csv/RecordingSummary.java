package servowright.app.input.csv;

import java.util.List;
import servowright.engine.recording.Remark;
import servowright.engine.recording.Spread;

/**
 * What one pass over a file of any size tells, without holding it.
 *
 * @param rows rows of numbers
 * @param times what the clock showed
 * @param channels range and mean of each channel, in SI where the unit is known
 * @param remarks what was concluded and found
 */
public record RecordingSummary(long rows, Times times, List<Named> channels, List<Remark> remarks) {
    public RecordingSummary {
        channels = List.copyOf(channels);
        remarks = List.copyOf(remarks);
    }

    /** A channel's name and spread. */
    public record Named(String name, Spread spread) {}

    /**
     * What the clock showed, in seconds; NaN where it shows nothing.
     *
     * @param firstS first time
     * @param lastS last time
     * @param meanStepS mean time between rows
     * @param largestStepS largest time between rows
     * @param repeats rows with the stamp of the row before
     * @param backward rows with an earlier stamp than the row before
     */
    public record Times(
            double firstS, double lastS, double meanStepS, double largestStepS, long repeats, long backward) {}
}
