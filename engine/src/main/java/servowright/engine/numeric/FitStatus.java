package servowright.engine.numeric;

/** How a fit ended. Only {@link #CONVERGED} carries an answer. */
public enum FitStatus {
    CONVERGED("the fit converged"),
    TOO_FEW_OBSERVATIONS("there are not more observations than parameters"),
    NOT_DETERMINED("the observations do not determine all parameters"),
    ITERATION_LIMIT("the fit was still moving when its iterations were used up"),
    NO_DESCENT("no step made the fit better, and it is not at a minimum"),
    NOT_FINITE("the model gives no finite value at the start"),
    RAN_AWAY("the parameters ran away without reaching a minimum");

    private final String reason;

    FitStatus(String reason) {
        this.reason = reason;
    }

    public boolean converged() {
        return this == CONVERGED;
    }

    /** The ending in plain words, as part of a sentence. */
    public String reason() {
        return reason;
    }
}
