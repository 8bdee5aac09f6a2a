package servowright.engine.numeric;

/** What every least squares fit says of its parameters, whatever its model. */
public sealed interface Regression permits LinearFit, NonlinearFit {
    Values parameters();

    Covariance covariance();

    Values residuals();

    int degreesOfFreedom();

    /** What the covariance was multiplied by for dependent residuals; 1 until asked for. */
    double varianceFactor();

    default double parameter(int j) {
        return parameters().at(j);
    }

    default double standardError(int j) {
        return covariance().standardDeviation(j);
    }

    default Whiteness whiteness() {
        return Whiteness.of(residuals().inside());
    }

    /** Degrees of freedom for a coverage factor, with dependent residuals counted only as far as they are independent. */
    default double effectiveDegreesOfFreedom() {
        return varianceFactor() == 1
                ? Math.max(1, degreesOfFreedom())
                : whiteness().degreesOfFreedom(varianceFactor(), parameters().size());
    }
}
