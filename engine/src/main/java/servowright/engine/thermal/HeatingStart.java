package servowright.engine.thermal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where to start a fit of winding and housing: the best of a few pairs, each scaled to the rise that was seen. */
final class HeatingStart {
    /** The winding's share of the whole thermal resistance. */
    private static final double[] SHARES = {0.1, 0.25, 0.5, 0.75};

    /** The longer time constant by the length of the run. */
    private static final double[] LONG = {0.1, 0.3, 1};

    /** The shorter one by the longer one. */
    private static final double[] SHORT = {0.02, 0.06, 0.2};

    private HeatingStart() {}

    /** The best pair; empty when the winding does not warm. */
    static Optional<TwoNode> of(HeatingRun run) {
        HeatingModel model = new HeatingModel(run);
        double[] seen = model.observed();
        double[] rise = new double[model.resistances()];
        for (int i = 0; i < rise.length; i++) {
            rise[i] = seen[i] + run.vanishingKelvin() - run.startKelvin();
        }
        Optional<TwoNode> best = Optional.empty();
        double least = Double.POSITIVE_INFINITY;
        for (TwoNode unit : candidates(run.spanSecond())) {
            double[] course = model.winding(model.unknowns(unit));
            double scale = scale(course, rise, run.startKelvin());
            double left = left(course, rise, run.startKelvin(), scale);
            if (scale > 0 && left < least) {
                least = left;
                best = Optional.of(scaled(unit, scale));
            }
        }
        return best;
    }

    /** Pairs of one kelvin per watt altogether. */
    private static List<TwoNode> candidates(double spanSecond) {
        List<TwoNode> all = new ArrayList<>();
        for (double share : SHARES) {
            for (double slow : LONG) {
                for (double fast : SHORT) {
                    double second = slow * spanSecond;
                    all.add(new TwoNode(share, fast * second / share, 1 - share, second / (1 - share)));
                }
            }
        }
        return all;
    }

    private static TwoNode scaled(TwoNode unit, double scale) {
        return new TwoNode(
                scale * unit.windingHousingKelvinPerWatt(),
                unit.windingJoulePerKelvin() / scale,
                scale * unit.housingAmbientKelvinPerWatt(),
                unit.housingJoulePerKelvin() / scale);
    }

    private static double scale(double[] course, double[] rise, double startKelvin) {
        double product = 0;
        double square = 0;
        for (int i = 0; i < rise.length; i++) {
            double unit = course[i] - startKelvin;
            product += unit * rise[i];
            square += unit * unit;
        }
        return square > 0 ? product / square : 0;
    }

    private static double left(double[] course, double[] rise, double startKelvin, double scale) {
        double sum = 0;
        for (int i = 0; i < rise.length; i++) {
            double off = rise[i] - scale * (course[i] - startKelvin);
            sum += off * off;
        }
        return sum;
    }
}
