package servowright.app.input.tree;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import servowright.app.input.tree.Node.Entry;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Node.Items;
import servowright.app.input.tree.Node.Scalar;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import tools.jackson.core.JacksonException;
import tools.jackson.core.JsonParser;
import tools.jackson.core.JsonToken;
import tools.jackson.core.ObjectReadContext;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.dataformat.yaml.YAMLFactory;
import tools.jackson.dataformat.yaml.YAMLParser;

/**
 * Reads YAML into a tree of places. Keys given twice, references inside the file ({@code *name}), a second document and
 * nesting deeper than anyone writes are problems, all named at once; a reference is never followed, so a small file
 * cannot grow.
 */
public final class TreeReader {
    private static final int DEEPEST = 20;
    private static final YAMLFactory YAML = YAMLFactory.builder()
            .loadSettings(
                    LoadSettings.builder().setCodePointLimit(Integer.MAX_VALUE).build())
            .disable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
            .build();

    private final String file;
    private final Problems problems;
    private final YAMLParser parser;
    private boolean stopped;

    private TreeReader(String file, Problems problems, YAMLParser parser) {
        this.file = file;
        this.problems = problems;
        this.parser = parser;
    }

    /** The keys of a file; empty when it cannot be read or holds something else, which is then a problem. */
    public static Optional<Group> keys(SourceText source, Problems problems) {
        int before = problems.count();
        List<Node> documents = documents(source, problems);
        if (documents.isEmpty()) {
            if (problems.count() == before) {
                Place first = new Place(source.file(), 1, "");
                problems.add(
                        Problem.Kind.MISSING, first, "", "the file is empty", "", "Write keys and values into it.");
            }
            return Optional.empty();
        }
        if (documents.size() > 1) {
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    documents.get(1).place(),
                    "---",
                    "a second document begins here",
                    "one document",
                    "Remove the line --- or keep it in a file of its own.");
        }
        return group(documents.get(0), problems);
    }

    private static Optional<Group> group(Node node, Problems problems) {
        if (node instanceof Group group) {
            return Optional.of(group);
        }
        String given = node instanceof Scalar s ? s.text() : "a list";
        problems.add(
                Problem.Kind.NOT_ALLOWED_HERE,
                node.place(),
                given,
                "the file holds no keys",
                "key: value",
                "Write key: value, with a blank behind the colon.");
        return Optional.empty();
    }

    /** Every document of a file; none when one of them cannot be read, which is then a problem. */
    public static List<Node> documents(SourceText source, Problems problems) {
        if (Indentation.hasTabs(source, problems)) {
            return List.of();
        }
        String text = BracketQuotes.put(source.text());
        try (JsonParser parser = YAML.createParser(ObjectReadContext.empty(), text)) {
            return new TreeReader(source.file(), problems, (YAMLParser) parser).documents();
        } catch (JacksonException e) {
            problems.add(YamlFault.problem(source.file(), e));
            return List.of();
        }
    }

    private List<Node> documents() {
        List<Node> documents = new ArrayList<>();
        while (!stopped && parser.nextToken() != null) {
            documents.add(node("", 1));
        }
        return stopped ? List.of() : documents;
    }

    private Node node(String path, int depth) {
        if (depth > DEEPEST) {
            stopped = true;
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    here(""),
                    "",
                    "this is nested deeper than " + DEEPEST + " levels",
                    DEEPEST + " levels",
                    "Check the indentation and the brackets.");
            return new Scalar(here(""), "");
        }
        JsonToken token = parser.currentToken();
        if (token == JsonToken.START_OBJECT) {
            return group(path, depth);
        }
        if (token == JsonToken.START_ARRAY) {
            return items(path, depth);
        }
        if (parser.isCurrentAlias()) {
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    here(path),
                    "*" + parser.getString(),
                    "*" + Problems.shortened(parser.getString()) + " refers to another part of the file",
                    "the value itself",
                    "Write the value out here.");
            return new Scalar(here(path), "");
        }
        return new Scalar(here(path), Optional.ofNullable(parser.getString()).orElse(""));
    }

    private Group group(String path, int depth) {
        Place place = here(path);
        Map<String, Entry> entries = new LinkedHashMap<>();
        while (!stopped && parser.nextToken() == JsonToken.PROPERTY_NAME) {
            String key = Optional.ofNullable(parser.currentName()).orElse("");
            Place keyPlace = here(below(path, key));
            parser.nextToken();
            Node value = node(keyPlace.path(), depth + 1);
            Entry before = entries.putIfAbsent(key, new Entry(keyPlace, value));
            if (before != null) {
                int line = before.place().line();
                problems.add(
                        Problem.Kind.CONTRADICTION,
                        keyPlace,
                        key,
                        "this key is given twice, first in line " + line,
                        "",
                        "Keep one of them.");
            }
        }
        return new Group(place, entries);
    }

    private Items items(String path, int depth) {
        Place place = here(path);
        List<Node> items = new ArrayList<>();
        while (!stopped && parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(node(below(path, String.valueOf(items.size() + 1)), depth + 1));
        }
        return new Items(place, items);
    }

    private static String below(String path, String key) {
        String name = Problems.shortened(key);
        return path.isEmpty() ? name : path + " / " + name;
    }

    private Place here(String path) {
        return new Place(file, Math.max(1, parser.currentTokenLocation().getLineNr()), path);
    }
}
