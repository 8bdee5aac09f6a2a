package servowright.engine.numeric;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns the working figures of a harmonic fit, which lie about the middle of the record, into those of the result. */
final class HarmonicFigures {
    /** Place of offset, drift, frequency and the first sine coefficient in the covariance of the result. */
    static final int OFFSET = 0;

    static final int DRIFT = 1;
    static final int FREQUENCY = 2;
    static final int FIRST_SINE = 3;

    private final HarmonicTerms terms;
    private final Abscissa abscissa;
    private final int firstOrderColumn;
    private final double omega;
    private final Values figures;
    private final double gridOrigin;
    private final Values residuals;
    private final Covariance inverse;
    private final Whiteness whiteness;

    HarmonicFigures(
            HarmonicTerms terms,
            Abscissa abscissa,
            double omega,
            double[] figures,
            double[] samples,
            double[] residuals,
            Covariance inverse) {
        this.terms = terms;
        this.abscissa = abscissa;
        this.firstOrderColumn = terms.drift() ? 2 : 1;
        this.omega = omega;
        this.figures = Values.owned(figures);
        this.gridOrigin = samples[0];
        this.residuals = Values.owned(residuals);
        this.inverse = inverse;
        this.whiteness = Whiteness.of(residuals);
    }

    HarmonicFit result(int passes) {
        int fitted = inverse.size();
        int freedom = residuals.size() - fitted;
        double residualSd = HouseholderQr.norm(residuals.inside(), 0) / Math.sqrt(freedom);
        Covariance covariance = working(residualSd).through(jacobian());
        double drift = terms.drift() ? figures.at(1) / abscissa.halfSpan() : 0;
        List<Harmonic> harmonics = new ArrayList<>();
        for (int j = 0; j < terms.orders().size(); j++) {
            harmonics.add(Harmonic.of(terms.orders().get(j), sine(j), cosine(j), covariance, FIRST_SINE + 2 * j));
        }
        return new HarmonicFit(
                FitStatus.CONVERGED,
                omega / (2 * Math.PI),
                covariance.standardDeviation(FREQUENCY),
                figures.at(0) - drift * abscissa.middle(),
                drift,
                harmonics,
                line(covariance),
                covariance,
                residuals,
                residualSd,
                freedom,
                whiteness,
                residuals.size() / varianceFactor(firstOrderColumn),
                passes);
    }

    /** Covariance of the working figures: scatter, times the residual spectrum at each, plus rounding. */
    private Covariance working(double residualSd) {
        int size = inverse.size();
        double[] factors = new double[size];
        double spent = 0;
        for (int i = 0; i < size; i++) {
            factors[i] = Math.sqrt(varianceFactor(i));
            spent += varianceFactor(i);
        }
        int n = residuals.size();
        double variance = residualSd * residualSd * (n - size) / Math.max(1, n - spent);
        double[][] matrix = new double[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                matrix[i][j] = variance * factors[i] * factors[j] * inverse.at(i, j);
            }
        }
        addRounding(matrix, residualSd);
        return Covariance.of(matrix);
    }

    private double varianceFactor(int figure) {
        if (figure < firstOrderColumn) {
            return whiteness.varianceFactor();
        }
        int index = (figure - firstOrderColumn) / 2;
        int orders = terms.orders().size();
        boolean ofLine = index == orders && terms.line().isPresent();
        double perUnit = ofLine
                ? terms.line().getAsDouble()
                : terms.orders().get(index < orders ? index : 0) * omega / (2 * Math.PI);
        return whiteness.varianceFactorAt(perUnit * abscissa.meanInterval());
    }

    /** Rounding moves each order along the direction that belongs to the phase of the first; any sample lies on the grid. */
    private void addRounding(double[][] matrix, double residualSd) {
        if (terms.step() == 0) {
            return;
        }
        Rounding rounding = Rounding.withResiduals(terms.step(), residualSd);
        double a = figures.at(firstOrderColumn);
        double b = figures.at(firstOrderColumn + 1);
        double amplitude = Math.hypot(a, b);
        double phase = Math.atan2(a, b) / terms.orders().get(0);
        for (int j = 0; j < terms.orders().size(); j++) {
            int order = terms.orders().get(j);
            double error = terms.drift()
                    ? rounding.amplitudeUncertainty(amplitude)
                    : rounding.amplitudeUncertainty(order, amplitude, figures.at(0) - gridOrigin);
            double quarter = order % 2 == 0 ? Math.PI / 2 : 0;
            double alongA = error * Math.sin(order * phase + quarter);
            double alongB = error * Math.cos(order * phase + quarter);
            int at = firstOrderColumn + 2 * j;
            matrix[at][at] += alongA * alongA;
            matrix[at][at + 1] += alongA * alongB;
            matrix[at + 1][at] += alongA * alongB;
            matrix[at + 1][at + 1] += alongB * alongB;
        }
    }

    /** The line stands behind the orders, here and in the covariance. */
    private Optional<Harmonic> line(Covariance covariance) {
        int index = terms.orders().size();
        return terms.line().isPresent()
                ? Optional.of(Harmonic.of(1, sine(index), cosine(index), covariance, FIRST_SINE + 2 * index))
                : Optional.empty();
    }

    private double turnToStart(int index) {
        double turning = index < terms.orders().size()
                ? terms.orders().get(index) * omega
                : 2 * Math.PI * terms.line().orElseThrow();
        return turning * abscissa.middle();
    }

    /** A cos(phase) at t = 0. */
    private double sine(int index) {
        double turn = turnToStart(index);
        int at = firstOrderColumn + 2 * index;
        return figures.at(at) * Math.sin(turn) + figures.at(at + 1) * Math.cos(turn);
    }

    /** A sin(phase) at t = 0. */
    private double cosine(int index) {
        double turn = turnToStart(index);
        int at = firstOrderColumn + 2 * index;
        return figures.at(at) * Math.cos(turn) - figures.at(at + 1) * Math.sin(turn);
    }

    /** Derivatives of the figures of the result by the working figures. */
    private double[][] jacobian() {
        int orders = terms.orders().size();
        int sines = orders + (terms.line().isPresent() ? 1 : 0);
        double[][] rows = new double[FIRST_SINE + 2 * sines][inverse.size()];
        double halfSpan = abscissa.halfSpan();
        double middle = abscissa.middle();
        rows[OFFSET][0] = 1;
        if (terms.drift()) {
            rows[OFFSET][1] = -middle / halfSpan;
            rows[DRIFT][1] = 1 / halfSpan;
        }
        int frequency = terms.frequencyKnown() ? -1 : inverse.size() - 1;
        if (frequency >= 0) {
            rows[FREQUENCY][frequency] = 1 / (2 * Math.PI * halfSpan);
        }
        for (int j = 0; j < sines; j++) {
            double turn = turnToStart(j);
            int at = firstOrderColumn + 2 * j;
            double[] sine = rows[FIRST_SINE + 2 * j];
            double[] cosine = rows[FIRST_SINE + 2 * j + 1];
            sine[at] = Math.sin(turn);
            sine[at + 1] = Math.cos(turn);
            cosine[at] = Math.cos(turn);
            cosine[at + 1] = -Math.sin(turn);
            if (frequency >= 0 && j < orders) {
                double perTurn = terms.orders().get(j) * middle / halfSpan;
                sine[frequency] = perTurn * cosine(j);
                cosine[frequency] = -perTurn * sine(j);
            }
        }
        return rows;
    }
}
