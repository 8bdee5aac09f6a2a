package servowright.engine.numeric;

/**
 * Which way a signal goes that runs out and back, in spite of noise and small steps back.
 *
 * <p>A turn counts once the signal has gone back by more than a threshold from its farthest point; everything after that
 * point goes the other way. <b>Valid for</b> noise well below the threshold.
 */
public final class Reversals {
    private Reversals() {}

    /**
     * Sense of every sample: 1 rising, -1 falling, 0 if the signal never moves by the threshold.
     *
     * @param threshold way back from which a turn counts, above 0
     */
    public static int[] senses(double[] signal, double threshold) {
        Check.that(threshold > 0, "the way back needs to be above 0, was ", threshold);
        int[] senses = new int[signal.length];
        int sense = 0;
        int farthest = 0;
        int lowest = 0;
        int highest = 0;
        int begun = 0;
        for (int i = 1; i < signal.length; i++) {
            lowest = signal[i] < signal[lowest] ? i : lowest;
            highest = signal[i] > signal[highest] ? i : highest;
            if (sense == 0 && signal[highest] - signal[lowest] > threshold) {
                sense = highest > lowest ? 1 : -1;
                begun = 0;
                farthest = i;
            }
            if (sense != 0 && sense * (signal[i] - signal[farthest]) > 0) {
                farthest = i;
            }
            if (sense != 0 && sense * (signal[farthest] - signal[i]) > threshold) {
                fill(senses, begun, farthest + 1, sense);
                begun = farthest + 1;
                sense = -sense;
                farthest = i;
            }
        }
        fill(senses, begun, senses.length, sense);
        return senses;
    }

    private static void fill(int[] senses, int from, int to, int sense) {
        for (int i = from; i < to; i++) {
            senses[i] = sense;
        }
    }
}
