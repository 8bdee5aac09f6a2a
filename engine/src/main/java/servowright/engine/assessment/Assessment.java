package servowright.engine.assessment;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.findings.Caution;
import servowright.engine.findings.Cautions;
import servowright.engine.findings.Finding;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.BusPlan;

/**
 * Everything that was found out about a machine. Views show it; they add nothing.
 *
 * @param machine    as declared
 * @param identified with what the bench knows
 * @param busPlan    the traffic of the bus; absent where something is missing for it
 * @param captures   of the bus, held against its plan
 * @param findings   worst first
 * @param cautions   hazards that go with the machine
 * @param version    of this program
 * @param inputs     SHA-256 of every file that went in, by name
 */
public record Assessment(
        Machine machine,
        IdentifiedMachine identified,
        Optional<BusPlan> busPlan,
        List<PlanSeen> captures,
        List<Finding> findings,
        List<Caution> cautions,
        String version,
        Map<String, String> inputs) {
    public Assessment {
        captures = List.copyOf(captures);
        findings = List.copyOf(findings);
        cautions = List.copyOf(cautions);
        inputs = Collections.unmodifiableMap(new TreeMap<>(inputs));
    }

    /** An assessment with the cautions that go with its machine, whose bus was neither planned nor captured. */
    public Assessment(
            Machine machine,
            IdentifiedMachine identified,
            List<Finding> findings,
            String version,
            Map<String, String> inputs) {
        this(machine, identified, Optional.empty(), List.of(), findings, Cautions.of(machine), version, inputs);
    }
}
