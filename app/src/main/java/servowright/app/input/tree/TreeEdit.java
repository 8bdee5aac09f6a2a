package servowright.app.input.tree;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.tree.Node.Entry;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Node.Items;
import servowright.app.input.tree.Node.Scalar;

/**
 * Changes one thing in a text file and nothing else: comments, order, quotation marks and blanks stay as somebody wrote
 * them. Every change is read again before it is given out, and must differ from the file in what was asked and in nothing
 * besides; a change that cannot be made so is not made.
 */
public final class TreeEdit {
    private final SourceText source;
    private final Group tree;

    private TreeEdit(SourceText source, Group tree) {
        this.source = source;
        this.tree = tree;
    }

    /** Empty when the file cannot be read as keys and values. */
    public static Optional<TreeEdit> of(SourceText source) {
        return read(source).map(tree -> new TreeEdit(source, tree));
    }

    /** What stands at a path; empty when nothing does or something else than one value. */
    public Optional<String> value(String path) {
        return find(tree, path).filter(Scalar.class::isInstance).map(n -> ((Scalar) n).text());
    }

    /** The file with another value at a path: {@code axes / tilt / mount / gap}. */
    public Optional<String> replaced(String path, String value) {
        if (!(find(tree, path).orElse(null) instanceof Scalar old) || value.indexOf('\n') >= 0) {
            return Optional.empty();
        }
        List<String> lines = lines();
        String line = lines.get(old.place().line() - 1);
        String held = old.text().isEmpty() ? ":" : old.text();
        for (int at = line.indexOf(held); at >= 0; at = line.indexOf(held, at + 1)) {
            for (String written : List.of(value, "'" + value.replace("'", "''") + "'")) {
                String put = old.text().isEmpty() ? ": " + written : written;
                lines.set(old.place().line() - 1, line.substring(0, at) + put + line.substring(at + held.length()));
                String text = String.join("\n", lines);
                if (reads(text, with(tree, path, value))) {
                    return Optional.of(text);
                }
            }
        }
        return Optional.empty();
    }

    /**
     * The file with one more item at the end of a list.
     *
     * @param path of the list: {@code tests / 4 / readings}
     * @param item its lines, the first without its dash
     */
    public Optional<String> appended(String path, List<String> item) {
        if (!(find(tree, path).orElse(null) instanceof Items list)
                || list.items().isEmpty()) {
            return Optional.empty();
        }
        Node last = list.items().get(list.items().size() - 1);
        String dashed = lines().get(last.place().line() - 1);
        int dash = dashed.indexOf('-');
        return dash < 0 || !dashed.substring(0, dash).isBlank()
                ? Optional.empty()
                : inserted(
                        lastLine(last),
                        dash,
                        "- ",
                        item,
                        path + " / " + (list.items().size() + 1));
    }

    /**
     * The file with a list that was not there, under one key of a group.
     *
     * @param path of the group: {@code tests / 4}
     * @param item lines of the only item
     */
    public Optional<String> withList(String path, String key, List<String> item) {
        if (!(find(tree, path).orElse(null) instanceof Group group)
                || group.entries().isEmpty()
                || group.entries().containsKey(key)) {
            return Optional.empty();
        }
        Map.Entry<String, Entry> first = group.entries().entrySet().iterator().next();
        int column = lines().get(first.getValue().place().line() - 1).indexOf(first.getKey() + ":");
        List<String> block = new ArrayList<>(List.of(key + ":"));
        for (int i = 0; i < item.size(); i++) {
            block.add((i == 0 ? "  - " : "    ") + item.get(i));
        }
        return column < 0 ? Optional.empty() : inserted(lastLine(group), column, "", block, path + " / " + key);
    }

    private Optional<String> inserted(int after, int column, String mark, List<String> block, String path) {
        List<String> lines = lines();
        for (int i = 0; i < block.size(); i++) {
            String lead = i == 0 ? mark : " ".repeat(mark.length());
            lines.add(after + i, " ".repeat(column) + lead + block.get(i));
        }
        String text = String.join("\n", lines);
        return read(new SourceText(source.file(), text, ""))
                .filter(now -> find(now, path).isPresent())
                .filter(now -> same(without(now, path), tree))
                .map(now -> text);
    }

    private List<String> lines() {
        return new ArrayList<>(List.of(source.text().split("\n", -1)));
    }

    private boolean reads(String text, Node wanted) {
        return read(new SourceText(source.file(), text, ""))
                .filter(now -> same(now, wanted))
                .isPresent();
    }

    private static Optional<Group> read(SourceText source) {
        Problems problems = new Problems();
        Optional<Group> group = TreeReader.keys(source, problems);
        return problems.isEmpty() ? group : Optional.empty();
    }

    private static Optional<Node> find(Node node, String path) {
        if (node.place().path().equals(path)) {
            return Optional.of(node);
        }
        return children(node).stream()
                .filter(c -> path.equals(c.place().path())
                        || path.startsWith(c.place().path() + " / "))
                .findFirst()
                .flatMap(c -> find(c, path));
    }

    private static List<Node> children(Node node) {
        if (node instanceof Group group) {
            return group.entries().values().stream().map(Entry::value).toList();
        }
        return node instanceof Items items ? items.items() : List.of();
    }

    private static int lastLine(Node node) {
        int last = node.place().line();
        for (Node child : children(node)) {
            last = Math.max(last, lastLine(child));
        }
        return last;
    }

    private static boolean same(Node one, Node other) {
        if (one instanceof Scalar a && other instanceof Scalar b) {
            return a.text().equals(b.text());
        }
        if (one instanceof Group a && other instanceof Group b) {
            List<String> keys = List.copyOf(a.entries().keySet());
            if (!keys.equals(List.copyOf(b.entries().keySet()))) {
                return false;
            }
        } else if (!(one instanceof Items && other instanceof Items)) {
            return false;
        }
        List<Node> left = children(one);
        List<Node> right = children(other);
        boolean all = left.size() == right.size();
        for (int i = 0; all && i < left.size(); i++) {
            all = same(left.get(i), right.get(i));
        }
        return all;
    }

    private static Node with(Node node, String path, String value) {
        return changed(node, path, Optional.of(value)).orElse(node);
    }

    private static Node without(Node node, String path) {
        return changed(node, path, Optional.empty()).orElse(node);
    }

    /** The tree with another value at a path, or with nothing there. */
    private static Optional<Node> changed(Node node, String path, Optional<String> value) {
        if (node.place().path().equals(path)) {
            return value.map(v -> new Scalar(node.place(), v));
        }
        if (node instanceof Group group) {
            Map<String, Entry> entries = new java.util.LinkedHashMap<>();
            group.entries()
                    .forEach((key, e) ->
                            changed(e.value(), path, value).ifPresent(v -> entries.put(key, new Entry(e.place(), v))));
            return Optional.of(new Group(group.place(), entries));
        }
        if (node instanceof Items items) {
            List<Node> kept = new ArrayList<>();
            items.items().forEach(i -> changed(i, path, value).ifPresent(kept::add));
            return Optional.of(new Items(items.place(), kept));
        }
        return Optional.of(node);
    }
}
