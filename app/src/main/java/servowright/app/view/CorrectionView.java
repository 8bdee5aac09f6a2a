package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import servowright.engine.bench.AngleCorrection;
import servowright.engine.encoder.Ripple;

/** What is to be taken off the reading of an angle sensor, as harmonics and as a table of any length. */
public record CorrectionView(AngleCorrection correction) {
    private static final List<Integer> USUAL_LENGTHS = List.of(16, 64, 256);

    /** A harmonic: its order, its amplitude and where it is greatest. */
    public record Row(String order, String amplitude, String phase) {}

    /** What a table of some entries leaves. */
    public record Residue(String entries, String nearest, String between) {}

    public String axis() {
        return correction.axis();
    }

    /** Which test it is from, and what it is taken off. */
    public String from() {
        return "From " + correction.test() + ". Corrected angle = reading − correction, mean zero"
                + (correction.reversed() ? "; the sign of the reading is turned first." : ".");
    }

    public List<Row> rows() {
        return ripples().stream()
                .map(r -> new Row(
                        String.valueOf(r.order()),
                        degree(r.amplitudeRad(), 4) + " deg",
                        degree(Math.atan2(r.cosineRad(), r.sineRad()), 1) + " deg"))
                .toList();
    }

    /** What tables of usual lengths leave of the error. */
    public List<Residue> residues() {
        return USUAL_LENGTHS.stream()
                .map(n -> new Residue(
                        String.valueOf(n),
                        degree(correction.residueAtNearestRad(n), 4) + " deg",
                        degree(correction.residueBetweenRad(n), 4) + " deg"))
                .toList();
    }

    /** Readings and what to take off, degrees. */
    public List<List<String>> table(int entries) {
        double[] table = correction.tableRad(entries);
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < entries; i++) {
            rows.add(List.of(degree(2 * Math.PI * i / entries, 6), degree(table[i], 6)));
        }
        return rows;
    }

    /** The harmonics as comma-separated values: error = Σ cosine · cos kθ + sine · sin kθ over the angle of the shaft. */
    public String harmonicsCsv() {
        StringBuilder text = new StringBuilder("order,cosine_deg,sine_deg\n");
        for (Ripple ripple : ripples()) {
            text.append(ripple.order()).append(',');
            text.append(degree(ripple.cosineRad(), 6)).append(',');
            text.append(degree(ripple.sineRad(), 6)).append('\n');
        }
        return text.toString();
    }

    /** A table as comma-separated values. */
    public String tableCsv(int entries) {
        StringBuilder text = new StringBuilder("reading_deg,correction_deg\n");
        table(entries).forEach(row -> text.append(String.join(",", row)).append('\n'));
        return text.toString();
    }

    /** What a table of that length leaves, in words. */
    public String residueText(int entries) {
        return "A table of " + entries + " entries leaves " + degree(correction.residueBetweenRad(entries), 4)
                + " deg read along straight lines, " + degree(correction.residueAtNearestRad(entries), 4)
                + " deg at the nearest entry.";
    }

    private List<Ripple> ripples() {
        return correction.error().ripples();
    }

    private static String degree(double rad, int places) {
        String text = String.format(Locale.ROOT, "%." + places + "f", Math.toDegrees(rad));
        return text.matches("-0\\.?0*") ? text.substring(1) : text;
    }
}
