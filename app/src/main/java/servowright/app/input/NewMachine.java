package servowright.app.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;

/**
 * A machine of which somebody has answered a few questions; what was left open is left out.
 *
 * @param said answers by key: machine, axes, feeds, supply, motor, magnets, speed_constant, resistance, drive, takes, current, rate
 */
public record NewMachine(Map<String, String> said) {
    private static final Pattern BETWEEN = Pattern.compile("[,;\\n]");

    public NewMachine {
        said = Map.copyOf(said);
    }

    /** Names of its axes. */
    public List<String> axes() {
        return Arrays.stream(BETWEEN.split(answer("axes")))
                .map(String::strip)
                .filter(a -> !a.isEmpty())
                .distinct()
                .toList();
    }

    private String answer(String key) {
        return said.getOrDefault(key, "").replaceAll("[ \\t\\r]+", " ").strip();
    }

    private boolean has(String key) {
        return !answer(key).isEmpty();
    }

    /** The text of machine.yaml. */
    public String text() {
        List<String> lines = new ArrayList<>();
        lines.add("machine: " + TestDraft.scalar(answer("machine")));
        if (has("supply")) {
            String kind = answer("feeds").equals("mains") ? "mains" : "battery";
            lines.add("supply:");
            lines.add("  " + kind + ": {voltage: " + TestDraft.scalar(answer("supply")) + "}");
        }
        lines.add("motors:");
        lines.add("  " + name("motor") + ":");
        figure(lines, "magnets", "magnets", "    # counted; half of them are the pole pairs");
        figure(lines, "speed_constant", "speed_constant", "");
        figure(lines, "resistance", "resistance", "");
        lines.add("drives:");
        lines.add("  " + name("drive") + ":");
        figure(lines, "takes", "voltage", "");
        if (has("current")) {
            lines.add("    current: {continuous: " + TestDraft.scalar(answer("current")) + "}");
        }
        lines.add("axes:");
        for (String axis : axes()) {
            lines.add("  " + TestDraft.name(axis) + ":");
            lines.add("    motor: " + name("motor"));
            lines.add("    drive: " + name("drive"));
        }
        if (has("rate")) {
            lines.add("bus: {rate: " + TestDraft.scalar(answer("rate")) + "}");
        }
        return lines(lines);
    }

    private String name(String key) {
        return TestDraft.name(has(key) ? answer(key) : key);
    }

    private void figure(List<String> lines, String answer, String key, String remark) {
        if (has(answer)) {
            lines.add("    " + key + ": " + TestDraft.scalar(answer(answer)) + remark);
        }
    }

    /** A part of which nothing is known yet is an empty group. */
    private static String lines(List<String> lines) {
        StringBuilder text = new StringBuilder();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i);
            boolean last = i + 1 == lines.size() || indent(lines.get(i + 1)) <= indent(line);
            text.append(line).append(line.endsWith(":") && last ? " {}" : "").append('\n');
        }
        return text.toString();
    }

    private static int indent(String line) {
        return line.length() - line.stripLeading().length();
    }
}
