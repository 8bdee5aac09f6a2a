package servowright.engine.assessment;

import java.util.Collections;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import servowright.engine.findings.Finding.Area;

/**
 * How to assess.
 *
 * @param version of this program
 * @param inputs  SHA-256 of every file that goes in, by name
 * @param areas   subjects to look at; empty for all of them
 */
public record AssessSettings(String version, Map<String, String> inputs, Set<Area> areas) {
    public AssessSettings {
        inputs = Collections.unmodifiableMap(new TreeMap<>(inputs));
        areas = Collections.unmodifiableSet(new TreeSet<>(areas));
    }

    /** Everything is looked at. */
    public static AssessSettings whole(String version, Map<String, String> inputs) {
        return new AssessSettings(version, inputs, Set.of());
    }

    boolean wants(Area area) {
        return areas.isEmpty() || areas.contains(area);
    }
}
