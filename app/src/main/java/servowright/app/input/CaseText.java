package servowright.app.input;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.quantity.ParsedQuantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/**
 * Worked cases from the text of one file. A document is one case, a list of cases, or {@code cases:} with {@code sheet},
 * {@code kind}, {@code source} and {@code note} beside it for those that do not say their own.
 */
final class CaseText {
    private static final List<String> SHARED = List.of("sheet", "kind", "source", "note");
    private static final List<String> KEYS =
            List.of("case", "sheet", "given", "expect", "says", "missing", "refused", "kind", "source", "note");

    private final String file;
    private final Consumer<Case> cases;
    private final Consumer<Problem> problems;

    private CaseText(String file, Consumer<Case> cases, Consumer<Problem> problems) {
        this.file = file;
        this.cases = cases;
        this.problems = problems;
    }

    /** Reads a text and hands on each case and each problem. */
    static void read(String file, String text, Consumer<Case> cases, Consumer<Problem> problems) {
        YamlText.Read read = YamlText.read(file, text);
        read.problems().forEach(problems);
        CaseText reader = new CaseText(file, cases, problems);
        read.documents().forEach(root -> reader.document(root));
    }

    private void document(Node root) {
        if (root instanceof Node.Items items) {
            items.nodes().forEach(node -> oneCase(node, Map.of()));
        } else if (root instanceof Node.Entries entries && entries.entries().containsKey("cases")) {
            Map<String, Node.Entry> shared = new LinkedHashMap<>(entries.entries());
            Node.Entry list = shared.remove("cases");
            known(entries, Stream.concat(SHARED.stream(), Stream.of("cases")).toList());
            if (list != null && list.value() instanceof Node.Items items) {
                items.nodes().forEach(node -> oneCase(node, shared));
            } else {
                problem(Problem.Kind.NOT_ALLOWED_HERE, root.line(), "cases", "a list of cases is expected", "");
            }
        } else {
            oneCase(root, Map.of());
        }
    }

    private void oneCase(Node node, Map<String, Node.Entry> shared) {
        if (!(node instanceof Node.Entries entries)) {
            String says = "a case is expected, found " + node.what();
            problem(Problem.Kind.NOT_ALLOWED_HERE, node.line(), "", says, "Begin it with case, sheet, given, expect.");
            return;
        }
        known(entries, KEYS);
        Map<String, Node.Entry> all = new LinkedHashMap<>(shared);
        all.putAll(entries.entries());
        Optional<String> name = required(all, "case", node.line());
        Optional<Declaration> sheet = required(all, "sheet", node.line()).flatMap(s -> sheet(s, all));
        Optional<Case.Kind> kind = required(all, "kind", node.line()).flatMap(k -> kind(k, all));
        Optional<String> source = required(all, "source", node.line());
        Map<String, List<String>> given = given(all);
        Case.Expected expected = expected(all, sheet, node.line());
        if (name.isPresent() && sheet.isPresent() && kind.isPresent() && source.isPresent()) {
            cases.accept(new Case(
                    name.get(),
                    sheet.get().name(),
                    given,
                    expected,
                    kind.get(),
                    source.get(),
                    texts(all, "note").stream().findFirst().orElse(""),
                    new Place(file, node.line(), name.get())));
        }
    }

    private void known(Node.Entries entries, List<String> keys) {
        entries.entries().forEach((key, entry) -> {
            if (!keys.contains(key)) {
                String remedy = Spelling.nearest(key, keys)
                        .map(n -> "Nearest: " + n + ".")
                        .orElse("Known: " + String.join(", ", keys) + ".");
                problem(Problem.Kind.UNKNOWN_KEY, entry.line(), key, "this key is not known", remedy);
            }
        });
    }

    private Optional<String> required(Map<String, Node.Entry> all, String key, int line) {
        Optional<String> text =
                texts(all, key).stream().filter(t -> !t.isBlank()).findFirst();
        if (text.isEmpty()) {
            problem(Problem.Kind.MISSING, line, key, "it is not given", "Every case needs it.");
        }
        return text;
    }

    private Optional<Declaration> sheet(String name, Map<String, Node.Entry> all) {
        Optional<Declaration> sheet = Worksheets.named(name).map(Worksheet::declaration);
        if (sheet.isEmpty()) {
            List<String> names =
                    Worksheets.all().stream().map(w -> w.declaration().name()).toList();
            unknownName(all, "sheet", "there is no worksheet \"" + name + "\"", name, names);
        }
        return sheet;
    }

    private Optional<Case.Kind> kind(String word, Map<String, Node.Entry> all) {
        Optional<Case.Kind> kind = Arrays.stream(Case.Kind.values())
                .filter(k -> k.word().equals(word))
                .findFirst();
        if (kind.isEmpty()) {
            List<String> words =
                    Arrays.stream(Case.Kind.values()).map(Case.Kind::word).toList();
            unknownName(all, "kind", "\"" + word + "\" is no kind of case", word, words);
        }
        return kind;
    }

    private void unknownName(
            Map<String, Node.Entry> all, String key, String statement, String word, List<String> names) {
        int line = Optional.ofNullable(all.get(key)).map(Node.Entry::line).orElse(0);
        String remedy = Spelling.nearest(word, names)
                .map(n -> "Nearest: " + n + ".")
                .orElse("Known: " + String.join(", ", names) + ".");
        problem(Problem.Kind.UNKNOWN_NAME, line, key, statement, remedy);
    }

    private Map<String, List<String>> given(Map<String, Node.Entry> all) {
        Map<String, List<String>> given = new LinkedHashMap<>();
        named(all, "given").forEach((name, entry) -> given.put(name, texts(entry, "given / " + name)));
        return given;
    }

    private Case.Expected expected(Map<String, Node.Entry> all, Optional<Declaration> sheet, int line) {
        Map<String, Stated> figures = new LinkedHashMap<>();
        Map<String, String> words = new LinkedHashMap<>();
        named(all, "expect").forEach((name, entry) -> {
            String path = "expect / " + name;
            sheet.filter(s -> s.result(name).isEmpty()).ifPresent(s -> unknownResult(s, name, entry));
            for (String text : texts(entry, path)) {
                ParsedQuantity parsed = QuantityText.parse(text);
                if (parsed instanceof Stated stated) {
                    figures.put(name, stated);
                    if (stated.spread() == Stated.Spread.VALUE) {
                        String says = "\"" + text + "\" has no tolerance";
                        problem(
                                Problem.Kind.MISSING,
                                entry.line(),
                                path,
                                says,
                                "Write it like 7 ± 0 or 0.24 ohm ± 1 %.");
                    }
                } else if (text.contains("±")) {
                    String says = "\"" + text + "\": " + ((ParsedQuantity.Malformed) parsed).reason();
                    problem(Problem.Kind.NOT_A_QUANTITY, entry.line(), path, says, "Write it like 0.24 ohm ± 1 %.");
                } else {
                    words.put(name, text);
                }
            }
        });
        Case.Expected expected =
                new Case.Expected(figures, words, texts(all, "says"), texts(all, "missing"), texts(all, "refused"));
        if (expected.size() == 0) {
            problem(Problem.Kind.MISSING, line, "expect", "the case expects nothing", "Give at least one result.");
        }
        return expected;
    }

    private void unknownResult(Declaration sheet, String name, Node.Entry entry) {
        List<String> names = sheet.results().stream().map(Result::name).toList();
        String remedy = Spelling.nearest(name, names)
                .map(n -> "Nearest: " + n + ".")
                .orElse("Known: " + String.join(", ", names) + ".");
        String says = sheet.name() + " has no such result";
        problem(Problem.Kind.UNKNOWN_KEY, entry.line(), "expect / " + name, says, remedy);
    }

    private Map<String, Node.Entry> named(Map<String, Node.Entry> all, String key) {
        Node.Entry entry = all.get(key);
        if (entry == null || (entry.value() instanceof Node.Scalar s && s.text().isEmpty())) {
            return Map.of();
        }
        if (entry.value() instanceof Node.Entries entries) {
            return entries.entries();
        }
        String says = "named values are expected, found " + entry.value().what();
        problem(Problem.Kind.NOT_ALLOWED_HERE, entry.line(), key, says, "Write it like {name: value}.");
        return Map.of();
    }

    private List<String> texts(Map<String, Node.Entry> all, String key) {
        Node.Entry entry = all.get(key);
        return entry == null ? List.of() : texts(entry, key);
    }

    /** One text or a list of them. */
    private List<String> texts(Node.Entry entry, String path) {
        List<Node> nodes = entry.value() instanceof Node.Items items ? items.nodes() : List.of(entry.value());
        List<String> texts = new ArrayList<>();
        for (Node node : nodes) {
            if (node instanceof Node.Scalar scalar) {
                texts.add(scalar.text());
            } else {
                String says = "a text or a list of texts is expected, found " + node.what();
                problem(Problem.Kind.NOT_ALLOWED_HERE, node.line(), path, says, "");
            }
        }
        return texts;
    }

    private void problem(Problem.Kind kind, int line, String path, String statement, String remedy) {
        problems.accept(new Problem(kind, new Place(file, line, path), "", statement, "", remedy));
    }
}
