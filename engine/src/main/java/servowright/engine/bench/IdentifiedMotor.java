package servowright.engine.bench;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;

/**
 * A motor with every parameter that could be found.
 *
 * @param parameters     one entry for each {@link MotorParameter}
 * @param contradictions between candidates of one parameter
 * @param remarks        what was noticed across tests and declarations: checks that agree, figures that could not be used
 */
public record IdentifiedMotor(
        String name,
        Map<MotorParameter, Parameter> parameters,
        List<Contradiction> contradictions,
        List<Phrase> remarks) {
    public IdentifiedMotor {
        parameters = Collections.unmodifiableMap(new LinkedHashMap<>(parameters));
        contradictions = List.copyOf(contradictions);
        remarks = List.copyOf(remarks);
    }

    /** A motor without remarks. */
    public IdentifiedMotor(String name, Map<MotorParameter, Parameter> parameters, List<Contradiction> contradictions) {
        this(name, parameters, contradictions, List.of());
    }

    /** The best value of a parameter, or what would give one. */
    public Outcome<Known> best(MotorParameter what) {
        Parameter found = parameters.get(what);
        return found == null
                ? Outcome.missing(what.words() + " of " + name, "state it in machine.yaml or measure it")
                : found.best();
    }

    /** Every candidate of a parameter, the best first. */
    public List<Candidate> candidates(MotorParameter what) {
        Parameter found = parameters.get(what);
        return found == null ? List.of() : found.candidates();
    }
}
