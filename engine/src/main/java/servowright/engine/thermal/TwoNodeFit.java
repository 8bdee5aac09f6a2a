package servowright.engine.thermal;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.NonlinearFit;

/**
 * Thermal resistances and heat capacities of winding and housing from a run in which heat was put in and the winding's
 * resistance, and the housing's temperature if there was a thermometer, were read.
 *
 * <p><b>Formula.</b> Least squares of R = R₀ (T_w − T₀)/(T₁ − T₀) and T_h g + c over the run, T_w and T_h by {@link TwoNode} from
 * the heat that was read; R₀, the
 * thermometer's zero c, its share g of the rise, known within its limits, and the logarithms of R_wh, C_w, R_ha, C_h are free. Since the heat is
 * read and not supposed, copper whose loss grows needs no term of its own. Both kinds of readings weigh by their own
 * scatter, neighbours that depend on each other less. <b>Valid for</b> a start at one temperature all through, R_ha that does
 * not depend on the temperature. <b>Source.</b> Heat balance and least squares.
 *
 * @param pair         winding and housing
 * @param covariance   of the logarithms of R_wh, C_w, R_ha, C_h
 * @param coldOhm      R₀
 * @param seconds      times of the resistances that were read
 * @param winding      temperature of the winding by its resistance, K
 * @param rests        that less the fitted one
 * @param housingRests thermometer less the fitted housing, zero taken off; empty without thermometer
 * @param unknowns     what was fitted
 * @param scatter      of the readings
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written to
public record TwoNodeFit(
        TwoNode pair,
        Covariance covariance,
        double coldOhm,
        double[] seconds,
        double[] winding,
        double[] rests,
        double[] housingRests,
        double[] unknowns,
        HeatingScatter scatter) {
    private static final int FEWEST = 20;

    /** Fits the run; empty when it has too few readings or the winding does not warm. */
    public static Optional<TwoNodeFit> of(HeatingRun run) {
        return run.read().length < FEWEST
                ? Optional.empty()
                : HeatingStart.of(run).flatMap(pair -> from(new HeatingModel(run), pair));
    }

    private static Optional<TwoNodeFit> from(HeatingModel model, TwoNode start) {
        double[] observed = model.observed();
        NonlinearFit rough =
                NonlinearFit.weighted(model, observed, HeatingScatter.ALIKE.sigma(model), model.unknowns(start));
        if (!rough.status().converged()) {
            return Optional.empty();
        }
        HeatingScatter scatter = HeatingScatter.of(model, rough.residuals().toArray());
        NonlinearFit fit = NonlinearFit.withKnownSigma(
                model, observed, scatter.sigma(model), rough.parameters().toArray());
        return fit.status().converged() ? Optional.of(of(model, fit, scatter)) : Optional.empty();
    }

    private static TwoNodeFit of(HeatingModel model, NonlinearFit fit, HeatingScatter scatter) {
        double[] x = fit.parameters().toArray();
        double[] left = fit.residuals().toArray();
        double[] rests = model.asKelvin(left, x);
        double[] course = model.winding(x);
        double[] winding = IntStream.range(0, rests.length)
                .mapToDouble(i -> course[i] + rests[i])
                .toArray();
        return new TwoNodeFit(
                HeatingModel.pair(x),
                fit.covariance(),
                model.coldOhm(x),
                model.seconds(),
                winding,
                rests,
                Arrays.copyOfRange(left, rests.length, rests.length + model.temperatures()),
                x,
                scatter);
    }

    /** R_wh, C_w, R_ha, C_h in this order. */
    public double figure(int j) {
        return HeatingModel.figure(pair, j);
    }

    /**
     * By how much each figure would be another one, had the run been another one: first order, one linear fit.
     *
     * @param run   that was fitted
     * @param other the same readings, taken for something a little different
     * @return changes of R_wh, C_w, R_ha, C_h
     */
    public double[] change(HeatingRun run, HeatingRun other) {
        HeatingModel model = new HeatingModel(run);
        double[] before = model.left(unknowns);
        double[] after = new HeatingModel(other).left(unknowns);
        double[] more = IntStream.range(0, before.length)
                .mapToDouble(i -> after[i] - before[i])
                .toArray();
        LinearFit step = LinearFit.weighted(Design.ofColumns(model.derivatives(unknowns)), more, scatter.sigma(model));
        return IntStream.range(0, HeatingModel.FIGURES)
                .mapToDouble(j -> figure(j) * step.parameter(j))
                .toArray();
    }
}
