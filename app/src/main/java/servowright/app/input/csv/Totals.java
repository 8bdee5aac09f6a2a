package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.recording.Spread;

/** Gathers the spread of every channel and keeps no row. */
final class Totals implements RowSink {
    private final Spread.Gathering[] channels;

    Totals(int count) {
        channels = new Spread.Gathering[count];
        for (int k = 0; k < count; k++) {
            channels[k] = new Spread.Gathering();
        }
    }

    @Override
    public void row(double[] values) {
        for (int k = 0; k < channels.length; k++) {
            channels[k].add(values[k + 1]);
        }
    }

    List<RecordingSummary.Named> named(List<Layout.Column> columns) {
        List<RecordingSummary.Named> named = new ArrayList<>();
        for (int k = 0; k < channels.length; k++) {
            Spread raw = channels[k].spread();
            Spread si = columns.get(k)
                    .unit()
                    .map(u -> new Spread(raw.numbers(), u.toSi(raw.least()), u.toSi(raw.most()), u.toSi(raw.mean())))
                    .orElse(raw);
            named.add(new RecordingSummary.Named(columns.get(k).name(), si));
        }
        return named;
    }
}
