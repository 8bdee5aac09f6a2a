package servowright.app.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.TokenStreamLocation;
import tools.jackson.core.exc.StreamConstraintsException;
import tools.jackson.dataformat.yaml.YAMLFactory;
import tools.jackson.dataformat.yaml.YAMLParser;

/**
 * Reads YAML into nodes with lines. Scalars are kept as text: what {@code 010} or {@code no} mean is for the reader of the
 * file to say. Anchors and aliases are refused, so that a small file cannot unfold into a large one.
 */
final class YamlText {
    private static final YAMLFactory YAML = new YAMLFactory();

    /** Deeper nesting than anything here needs. */
    private static final int DEEPEST = 40;

    private final String file;
    private final List<Problem> problems = new ArrayList<>();

    private YamlText(String file) {
        this.file = file;
    }

    /**
     * What a text holds.
     *
     * @param documents each with its root; empty when the text could not be read
     * @param problems  what is wrong with the form of the text
     */
    record Read(List<Node> documents, List<Problem> problems) {
        public Read {
            documents = List.copyOf(documents);
            problems = List.copyOf(problems);
        }
    }

    /**
     * Reads a text.
     *
     * @param file as the user knows it
     */
    static Read read(String file, String text) {
        return new YamlText(file).documents(text);
    }

    private Read documents(String text) {
        List<Node> documents = new ArrayList<>();
        try (JsonParser parser = YAML.createParser(ObjectReadContext.empty(), text)) {
            while (parser.nextToken() != null) {
                documents.add(node(parser, 0));
            }
        } catch (TooDeep e) {
            add(Problem.Kind.UNREADABLE, e.line, "nested too deeply", "Keep below " + DEEPEST + " levels.");
        } catch (JacksonException e) {
            unreadable(e);
        }
        return problems.stream().anyMatch(p -> p.kind() == Problem.Kind.UNREADABLE)
                ? new Read(List.of(), problems)
                : new Read(documents, problems);
    }

    private Node node(JsonParser parser, int depth) {
        int line = line(parser);
        if (depth > DEEPEST) {
            throw new TooDeep(line);
        }
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_ARRAY) {
            List<Node> nodes = new ArrayList<>();
            while (parser.nextToken() != JsonToken.END_ARRAY) {
                nodes.add(node(parser, depth + 1));
            }
            return new Node.Items(nodes, line);
        }
        if (token == JsonToken.START_OBJECT) {
            return entries(parser, depth, line);
        }
        if (parser instanceof YAMLParser yaml && yaml.isCurrentAlias()) {
            add(Problem.Kind.NOT_ALLOWED_HERE, line, "an alias (*) is not taken", "Write the value out.");
        }
        return new Node.Scalar(token == JsonToken.VALUE_NULL ? "" : text(parser), line);
    }

    private Node entries(JsonParser parser, int depth, int line) {
        Map<String, Node.Entry> entries = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String name = text(parser);
            int nameLine = line(parser);
            parser.nextToken();
            Node.Entry entry = new Node.Entry(node(parser, depth + 1), nameLine);
            Node.Entry before = entries.putIfAbsent(name, entry);
            if (before != null) {
                String says = "\"" + name + "\" stands here twice, first on line " + before.line();
                problems.add(new Problem(
                        Problem.Kind.CONTRADICTION, new Place(file, nameLine, name), name, says, "", "Keep one."));
            }
        }
        return new Node.Entries(entries, line);
    }

    private static String text(JsonParser parser) {
        return Optional.ofNullable(parser.getString()).orElse("");
    }

    private static int line(JsonParser parser) {
        return parser.currentTokenLocation().getLineNr();
    }

    private void unreadable(JacksonException e) {
        int line = Optional.ofNullable(e.getLocation())
                .map(TokenStreamLocation::getLineNr)
                .orElse(0);
        String says = e instanceof StreamConstraintsException
                ? "larger or more nested than such a file can be"
                : "the text cannot be read here: " + reason(e);
        add(
                Problem.Kind.UNREADABLE,
                Math.max(line, 0),
                says,
                "Check indents, colons and quotes on this line and above.");
    }

    /** The first line of the parser's words: what follows repeats the place and the text. */
    private static String reason(JacksonException e) {
        String words = Optional.ofNullable(e.getOriginalMessage()).orElse("no reason given");
        return words.lines()
                .filter(l -> !l.isBlank())
                .findFirst()
                .orElse("no reason given")
                .strip();
    }

    private void add(Problem.Kind kind, int line, String statement, String remedy) {
        problems.add(new Problem(kind, new Place(file, line, ""), "", statement, "", remedy));
    }

    /** Nesting beyond any use; caught where the text is read. */
    private static final class TooDeep extends RuntimeException {
        private static final long serialVersionUID = 1;
        private final int line;

        private TooDeep(int line) {
            super("nested too deeply", null, false, false);
            this.line = line;
        }
    }
}
