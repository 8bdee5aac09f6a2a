package servowright.app.input.link;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.capture.LinkReport;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/**
 * Reads what {@code ip -details -statistics link show} prints of CAN interfaces, pasted into a file with whatever stands around it: one
 * interface or many, with or without statistics, quoted or not. Interfaces of other kinds are passed over. <b>Source.</b> form of the
 * output: public kernel documentation and outputs in public reports (seen).
 */
public final class LinkText {
    /** A longer file is no such output. */
    private static final int MOST_BYTES = 1 << 20;

    private static final int SNIFFED = 1 << 13;
    private static final Pattern HEADING = Pattern.compile("\\d+: ([^\\s:@]{1,64})(?:@\\S+)?: <.*");
    private static final Pattern KIND = Pattern.compile("link/(\\S+).*");
    private static final Pattern QUOTED = Pattern.compile("^[|>\\s]+");

    private final String file;
    private final List<LinkLines> links = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();

    private LinkText(String file) {
        this.file = file;
    }

    /** Whether a file looks like such an output. */
    public static boolean in(Path path) {
        if (!Files.isRegularFile(path)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(path)) {
            String head = new String(in.readNBytes(SNIFFED), StandardCharsets.UTF_8);
            return head.lines()
                    .map(LinkText::plain)
                    .anyMatch(l -> l.startsWith("link/can") || l.startsWith("can state "));
        } catch (IOException e) {
            return false;
        }
    }

    /** Reads it. */
    public static LinkResult read(Path path, String shown) {
        LinkText text = new LinkText(shown);
        try {
            if (Files.size(path) > MOST_BYTES) {
                return new LinkResult.Refused(List.of(text.problem(0, "it is longer than any such output", "")));
            }
            List<String> lines = new String(Files.readAllBytes(path), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            for (int k = 0; k < lines.size(); k++) {
                text.line(plain(lines.get(k)), k + 1);
            }
        } catch (IOException e) {
            return new LinkResult.Refused(List.of(text.problem(0, "it cannot be read", "")));
        }
        return text.result();
    }

    private static String plain(String line) {
        return QUOTED.matcher(line).replaceFirst("").strip();
    }

    private void line(String line, int number) {
        Matcher heading = HEADING.matcher(line);
        if (heading.matches()) {
            links.add(new LinkLines(heading.group(1), number));
            return;
        }
        if (links.isEmpty()) {
            return;
        }
        LinkLines link = links.get(links.size() - 1);
        Matcher kind = KIND.matcher(line);
        if (kind.matches()) {
            link.kind(kind.group(1));
        } else {
            link.line(line).ifPresent(wrong -> problems.add(problem(number, wrong, link.name())));
        }
    }

    private LinkResult result() {
        List<LinkReport> reports = new ArrayList<>();
        for (LinkLines link : links) {
            if (!link.can()) {
                continue;
            }
            Optional<LinkReport> report = link.report();
            report.ifPresent(reports::add);
            if (report.isEmpty()) {
                problems.add(problem(link.number(), "nothing is said of the state of " + link.name(), link.name()));
            }
        }
        if (reports.isEmpty() && problems.isEmpty()) {
            problems.add(problem(0, "it tells of no CAN interface", ""));
        }
        return problems.isEmpty() ? new LinkResult.Read(reports) : new LinkResult.Refused(problems);
    }

    private Problem problem(int line, String what, String link) {
        String of = link.isEmpty() ? "can0" : link;
        return new Problem(
                Problem.Kind.UNREADABLE,
                new Place(file, line, ""),
                "",
                what,
                "",
                "Paste all that `ip -details -statistics link show " + of + "` prints.");
    }
}
