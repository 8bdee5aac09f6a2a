package servowright.engine.thermal;

import java.util.Arrays;
import java.util.stream.IntStream;
import servowright.engine.numeric.Derivative;
import servowright.engine.numeric.NonlinearModel;

/**
 * What a fit compares with a heating run: resistances of the winding as kelvin above the temperature at which they vanish, the
 * first one taken as cold, then what the thermometer on the housing shows, then what is known of that thermometer.
 *
 * <p>Unknowns: logarithms of R_wh, C_w, R_ha, C_h; R₀ over the first resistance; with a thermometer its zero as c + 1 K, so
 * that it is never zero itself, and the share g of the housing's rise that it shows, which counts as read once, 1 within its
 * limits.
 */
final class HeatingModel implements NonlinearModel {
    /** R_wh, C_w, R_ha, C_h. */
    static final int FIGURES = 4;

    private static final int COLD = FIGURES;
    private static final int ZERO = FIGURES + 1;
    private static final int SHARE = FIGURES + 2;

    /** Logarithms and numbers near 1 are smooth enough for one fixed step of their central differences. */
    private static final double STEP = 1e-4;

    private static final double MOST_LOGARITHM = 50;

    private final HeatingRun run;
    private final int[] read;

    HeatingModel(HeatingRun run) {
        this.run = run;
        this.read = run.read();
    }

    /** Resistances that were read. */
    int resistances() {
        return read.length;
    }

    /** Readings of the thermometer. */
    int temperatures() {
        return run.housing().length;
    }

    /** How many unknowns there are. */
    int unknowns() {
        return temperatures() > 0 ? SHARE + 1 : ZERO;
    }

    private double[] rows() {
        return new double[read.length + (temperatures() > 0 ? temperatures() + 1 : 0)];
    }

    double[] observed() {
        double cold = run.ohm()[read[0]] / (run.startKelvin() - run.vanishingKelvin());
        double[] all = rows();
        Arrays.fill(all, 1);
        for (int i = 0; i < read.length; i++) {
            all[i] = run.ohm()[read[i]] / cold;
        }
        System.arraycopy(run.housing(), 0, all, read.length, temperatures());
        return all;
    }

    @Override
    public double[] predict(double[] x) {
        double[] all = rows();
        if (Arrays.stream(x).limit(FIGURES).anyMatch(v -> !(Math.abs(v) < MOST_LOGARITHM))) {
            Arrays.fill(all, Double.NaN);
            return all;
        }
        HeatingRun.Course course = run.through(pair(x));
        for (int i = 0; i < read.length; i++) {
            all[i] = x[COLD] * (course.winding()[read[i]] - run.vanishingKelvin());
        }
        for (int k = 0; k < temperatures(); k++) {
            double rise = course.housing()[k] - run.startKelvin();
            all[read.length + k] = run.startKelvin() + x[SHARE] * rise + x[ZERO] - 1;
        }
        if (temperatures() > 0) {
            all[all.length - 1] = x[SHARE];
        }
        return all;
    }

    @Override
    public double[][] derivatives(double[] at) {
        return Derivative.central(this::predict, at, STEP);
    }

    /** Observed less predicted. */
    double[] left(double... x) {
        double[] predicted = predict(x);
        double[] observed = observed();
        return IntStream.range(0, observed.length)
                .mapToDouble(i -> observed[i] - predicted[i])
                .toArray();
    }

    /** Scatter of every reading, for one of the best resistances and of the thermometer in kelvin. */
    double[] sigma(double winding, double thermometer) {
        double[] sigma = rows();
        Arrays.setAll(sigma, i -> i < read.length ? winding * run.sigma()[read[i]] : thermometer);
        if (temperatures() > 0) {
            sigma[sigma.length - 1] = run.riseStandard();
        }
        return sigma;
    }

    /** Unknowns that belong to a pair, with resistance and thermometer taken as they are. */
    double[] unknowns(TwoNode pair) {
        double[] x = new double[unknowns()];
        Arrays.setAll(x, j -> j < FIGURES ? Math.log(figure(pair, j)) : 1);
        return x;
    }

    static TwoNode pair(double... x) {
        return new TwoNode(Math.exp(x[0]), Math.exp(x[1]), Math.exp(x[2]), Math.exp(x[3]));
    }

    /** R_wh, C_w, R_ha, C_h in this order. */
    static double figure(TwoNode pair, int j) {
        return switch (j) {
            case 0 -> pair.windingHousingKelvinPerWatt();
            case 1 -> pair.windingJoulePerKelvin();
            case 2 -> pair.housingAmbientKelvinPerWatt();
            case 3 -> pair.housingJoulePerKelvin();
            default -> throw new IllegalArgumentException("a pair has 4 figures, asked for number " + j);
        };
    }

    /** Temperature of the winding along the resistances that were read, K. */
    double[] winding(double... x) {
        double[] course = run.through(pair(x)).winding();
        return Arrays.stream(read).mapToDouble(k -> course[k]).toArray();
    }

    /** Times of the resistances that were read. */
    double[] seconds() {
        return Arrays.stream(read).mapToDouble(k -> run.seconds()[k]).toArray();
    }

    /** Resistance of the cold winding. */
    double coldOhm(double... x) {
        return x[COLD] * run.ohm()[read[0]];
    }

    /** Residuals of the winding as temperature. */
    double[] asKelvin(double[] left, double... x) {
        return Arrays.stream(left, 0, read.length).map(r -> r / x[COLD]).toArray();
    }
}
