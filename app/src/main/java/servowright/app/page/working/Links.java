package servowright.app.page.working;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import servowright.app.page.Asked;
import servowright.app.view.View;
import servowright.app.view.WorkingText;

/** Makes the places that an origin names into links: lines of files, recordings, bench tests, earlier lines of a working. */
public final class Links {
    private static final String LINE = "\\b(machine\\.yaml|bench\\.yaml):(\\d+)";

    /** Part of a text; the address is empty for mere words. */
    public record Piece(String text, String address) {}

    private final Map<String, String> places;
    private final List<WorkingText> lines;

    private Links(Map<String, String> places, List<WorkingText> lines) {
        this.places = places;
        this.lines = lines;
    }

    /** For a working of this view. */
    static Links of(View view, List<WorkingText> lines) {
        Map<String, String> places = new LinkedHashMap<>();
        view.tests().forEach(t -> places.put(t.id(), "/bench#" + Asked.id(t.id())));
        view.files().stream()
                .map(View.FileView::name)
                .filter(n -> n.contains("/"))
                .forEach(n -> places.put(n, Asked.address("/bench/recording", "file", n)));
        return new Links(places, lines);
    }

    /** For a working that stands by itself. */
    public static Links none(List<WorkingText> lines) {
        return new Links(Map.of(), lines);
    }

    /** The same, where the lines above line {@code number} (from 0) can be referred to by their labels. */
    public Links before(int number) {
        Map<String, String> more = new LinkedHashMap<>(places);
        for (int i = 0; i < number; i++) {
            String label = lines.get(i).label();
            if (!label.isBlank()) {
                more.put(label, "#step-" + (i + 1));
            }
        }
        return new Links(more, lines);
    }

    /** The text with its links. */
    public List<Piece> pieces(String text) {
        String names = places.keySet().stream()
                .sorted((a, b) -> b.length() - a.length())
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
        Matcher m = Pattern.compile(names.isEmpty() ? LINE : LINE + "|(" + names + ")")
                .matcher(text);
        List<Piece> pieces = new ArrayList<>();
        int end = 0;
        while (m.find()) {
            if (m.start() > end) {
                pieces.add(new Piece(text.substring(end, m.start()), ""));
            }
            String address = m.group(1) == null
                    ? places.getOrDefault(m.group(), "")
                    : "/files/" + m.group(1) + "#line-" + m.group(2);
            pieces.add(new Piece(m.group(), address));
            end = m.end();
        }
        if (end < text.length()) {
            pieces.add(new Piece(text.substring(end), ""));
        }
        return pieces;
    }
}
