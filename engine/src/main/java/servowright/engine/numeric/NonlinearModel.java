package servowright.engine.numeric;

import java.util.function.UnaryOperator;

/** What a fit compares with the observations: one predicted value per observation for given parameters. */
@FunctionalInterface
public interface NonlinearModel {
    /**
     * The predicted values, one per observation, in a new array. NaN or infinity says that the parameters lie outside
     * the model's domain; the fit then turns back.
     */
    double[] predict(double[] parameters);

    /**
     * Derivatives of the predictions: column j holds those by parameter j. By extrapolated central differences unless a
     * model knows better.
     */
    default double[][] derivatives(double[] parameters) {
        return Derivative.columns(this::predict, parameters, Derivative.defaultSteps(parameters));
    }

    /** A model that brings its own derivatives, by columns. */
    static NonlinearModel withDerivatives(UnaryOperator<double[]> predict, Columns derivatives) {
        return new NonlinearModel() {
            @Override
            public double[] predict(double[] parameters) {
                return predict.apply(parameters);
            }

            @Override
            public double[][] derivatives(double[] parameters) {
                return derivatives.at(parameters);
            }
        };
    }

    /** Column j: the derivatives of all predictions by parameter j. */
    @FunctionalInterface
    interface Columns {
        double[][] at(double[] parameters);
    }
}
