package servowright.engine.assessment;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.findings.Finding;
import servowright.engine.machine.Machine;

/**
 * Everything that was found out about a machine. Views show it; they add nothing.
 *
 * @param machine    as declared
 * @param identified with what the bench knows
 * @param findings   worst first
 * @param version    of this program
 * @param inputs     SHA-256 of every file that went in, by name
 */
public record Assessment(
        Machine machine,
        IdentifiedMachine identified,
        List<Finding> findings,
        String version,
        Map<String, String> inputs) {
    public Assessment {
        findings = List.copyOf(findings);
        inputs = Collections.unmodifiableMap(new TreeMap<>(inputs));
    }
}
