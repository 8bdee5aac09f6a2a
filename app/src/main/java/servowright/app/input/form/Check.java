package servowright.app.input.form;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Node;
import servowright.app.input.tree.Node.Entry;
import servowright.app.input.tree.Node.Group;
import servowright.app.input.tree.Node.Items;
import servowright.app.input.tree.Node.Scalar;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Spelling;

/** Checks a tree against a form. Everything wrong becomes a problem; everything good becomes a value. */
public final class Check {
    private static final int LONGEST_NAME = 60;

    private final Map<String, Set<String>> names;
    private final Problems problems;
    private final Deque<Shape.Group> around = new ArrayDeque<>();

    /**
     * @param names the parts that may be referred to, by section; a section that is absent is not checked
     */
    public Check(Map<String, Set<String>> names, Problems problems) {
        this.names = Map.copyOf(names);
        this.problems = problems;
    }

    /** Checks the keys of a file. */
    public Part part(Group group, Shape.Group form) {
        Map<String, Value> values = new LinkedHashMap<>();
        around.push(form);
        group.entries()
                .forEach((key, entry) -> form.field(key)
                        .ifPresentOrElse(
                                field -> value(field.shape(), entry.value()).ifPresent(v -> values.put(key, v)),
                                () -> unknownKey(key, entry, form)));
        form.fields().stream()
                .filter(f -> (f.required() || asked(group, f)) && !said(group, f.key()))
                .forEach(f -> missing(f, group.place()));
        around.pop();
        return new Part(group.place(), values);
    }

    /** Whether another key says that this one is needed. */
    private static boolean asked(Group group, Field field) {
        return field.with()
                .filter(w -> Optional.ofNullable(group.entries().get(w.key()))
                        .map(Entry::value)
                        .filter(v -> v instanceof Scalar s
                                && w.said().contains(s.text().strip()))
                        .isPresent())
                .isPresent();
    }

    private static boolean said(Group group, String key) {
        Entry entry = group.entries().get(key);
        return entry != null && !(entry.value() instanceof Scalar s && s.absent());
    }

    private Optional<Value> value(Shape shape, Node node) {
        if (node instanceof Scalar s && s.absent()) {
            return Optional.empty();
        }
        if (shape instanceof Shape.Group form) {
            return keys(node, "keys").map(g -> part(g, form));
        }
        if (shape instanceof Shape.Named named) {
            return keys(node, named.many() + " under names of your own").map(g -> named(g, named));
        }
        if (shape instanceof Shape.Listed listed) {
            return listed(node, listed);
        }
        if (shape instanceof Shape.Figure figure) {
            return figures(figure, node);
        }
        return scalar(node, example(shape)).flatMap(s -> leaf(shape, s));
    }

    private Optional<Value> leaf(Shape shape, Scalar scalar) {
        if (shape instanceof Shape.Choice choice) {
            return choice(choice, scalar);
        }
        if (shape instanceof Shape.Reference reference) {
            return reference(reference, scalar);
        }
        if (shape instanceof Shape.Limits limits) {
            return limits(limits, scalar);
        }
        return shape instanceof Shape.Words words ? words(words, scalar) : Optional.empty();
    }

    private static String example(Shape shape) {
        return shape instanceof Shape.Choice c ? c.words().get(0) : "";
    }

    private Value named(Group group, Shape.Named named) {
        Map<String, Value> values = new LinkedHashMap<>();
        group.entries().forEach((name, entry) -> {
            if (goodName(name, entry.place())) {
                Node node = entry.value();
                boolean bare = node instanceof Scalar s && s.absent() && named.each() instanceof Shape.Group;
                Optional<Value> value = value(named.each(), bare ? new Group(node.place(), Map.of()) : node);
                value.ifPresent(v -> values.put(name, v));
            }
        });
        return new Part(group.place(), values);
    }

    private boolean goodName(String name, Place place) {
        boolean good = !name.isBlank()
                && name.length() <= LONGEST_NAME
                && name.chars().noneMatch(c -> c == '/' || !Problems.plain(c));
        if (!good) {
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    place,
                    name,
                    Problems.quoted(name) + " cannot be a name here",
                    "up to " + LONGEST_NAME + " characters without a slash",
                    "Use a few letters, digits, blanks or hyphens.");
        }
        return good;
    }

    private Optional<Value> listed(Node node, Shape.Listed listed) {
        if (!(node instanceof Items items)) {
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    node.place(),
                    given(node),
                    "a list of " + listed.one() + "s is asked here",
                    "a list",
                    "Begin each " + listed.one() + " with a hyphen and a blank.");
            return Optional.empty();
        }
        List<Value> values = new ArrayList<>();
        items.items().forEach(item -> value(listed.each(), item).ifPresent(values::add));
        return Optional.of(new Value.Series(items.place(), values));
    }

    private Optional<Value> figures(Shape.Figure figure, Node node) {
        Key key = figure.key();
        List<Scalar> scalars = new ArrayList<>();
        if (node instanceof Items items && key.several()) {
            items.items().forEach(item -> scalar(item, key.example()).ifPresent(scalars::add));
        } else {
            scalar(node, key.example()).ifPresent(scalars::add);
        }
        FigureCheck check = new FigureCheck(key, siblings(), problems);
        List<Declared> good = new ArrayList<>();
        for (Scalar s : scalars) {
            if (figure.words().contains(s.text().strip())) {
                return Optional.of(new Value.Words(s.place(), s.text().strip()));
            }
            if (!s.absent()) {
                check.read(s.text(), s.place()).ifPresent(good::add);
            }
        }
        return good.isEmpty() ? Optional.empty() : Optional.of(new Value.Given(node.place(), good));
    }

    private List<Key> siblings() {
        return around.isEmpty()
                ? List.of()
                : around.peek().fields().stream()
                        .filter(f -> f.shape() instanceof Shape.Figure)
                        .map(f -> ((Shape.Figure) f.shape()).key())
                        .toList();
    }

    private Optional<Value> choice(Shape.Choice choice, Scalar scalar) {
        String word = scalar.text().strip();
        if (choice.words().contains(word)) {
            return Optional.of(new Value.Words(scalar.place(), word));
        }
        unknownName(scalar, Problems.quoted(word) + " is not known here", choice.words());
        return Optional.empty();
    }

    private Optional<Value> reference(Shape.Reference reference, Scalar scalar) {
        Set<String> known = names.get(reference.section());
        String name = scalar.text();
        if (known == null || known.contains(name)) {
            return Optional.of(new Value.Words(scalar.place(), name));
        }
        String statement = "there is no " + reference.one() + " " + Problems.quoted(name);
        if (known.isEmpty()) {
            problems.add(
                    Problem.Kind.UNKNOWN_NAME,
                    scalar.place(),
                    name,
                    statement,
                    "",
                    "Declare it under " + reference.section() + ".");
        } else {
            unknownName(scalar, statement, List.copyOf(known));
        }
        return Optional.empty();
    }

    private void unknownName(Scalar scalar, String statement, List<String> known) {
        String all = String.join(", ", known);
        String near = Spelling.nearest(Problems.shortened(scalar.text()), known)
                .filter(n -> known.size() > 4)
                .map(n -> "Nearest: " + n + ". ")
                .orElse("");
        problems.add(
                Problem.Kind.UNKNOWN_NAME, scalar.place(), scalar.text(), statement, all, near + "Known: " + all + ".");
    }

    private Optional<Value> limits(Shape.Limits limits, Scalar scalar) {
        Optional<Accuracy> read =
                scalar.text().length() > LONGEST_NAME ? Optional.empty() : Accuracy.parse(scalar.text());
        Optional<Accuracy> good = read.filter(
                a -> a.absolute().si() == 0 || a.absolute().dimension().equals(limits.dimension()));
        if (good.isEmpty()) {
            problems.add(
                    Problem.Kind.NOT_A_QUANTITY,
                    scalar.place(),
                    scalar.text(),
                    Problems.quoted(scalar.text()) + " says no limits for " + limits.shown(),
                    "± 0.1 %",
                    "Write them like ± 0.1 %, or ± 0.1 % ± 2 mV for a voltage.");
        }
        return good.map(a -> new Value.Limits(scalar.place(), a));
    }

    private Optional<Value> words(Shape.Words words, Scalar scalar) {
        String text = scalar.text().strip();
        boolean good = words.form()
                .map(f -> text.length() <= 200 && f.matcher(text).matches())
                .orElse(true);
        if (!good) {
            problems.add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    scalar.place(),
                    text,
                    Problems.quoted(text) + " cannot be understood here",
                    words.remedy(),
                    "Write it like " + words.remedy() + ".");
        }
        return good ? Optional.of(new Value.Words(scalar.place(), text)) : Optional.empty();
    }

    private Optional<Group> keys(Node node, String what) {
        if (node instanceof Group group) {
            return Optional.of(group);
        }
        problems.add(
                Problem.Kind.NOT_ALLOWED_HERE,
                node.place(),
                given(node),
                what + " are asked here, " + shown(node) + " is none",
                "key: value",
                "Write key: value below it, with a blank behind each colon.");
        return Optional.empty();
    }

    private Optional<Scalar> scalar(Node node, String example) {
        if (node instanceof Scalar scalar) {
            return Optional.of(scalar);
        }
        String statement = node instanceof Items items
                ? "one value is allowed here, not a list of " + items.items().size()
                : "one value is asked here, not keys";
        problems.add(
                Problem.Kind.NOT_ALLOWED_HERE,
                node.place(),
                given(node),
                statement,
                example,
                example.isEmpty() ? "Write one value." : "Write one value, like " + example + ".");
        return Optional.empty();
    }

    private static String given(Node node) {
        return node instanceof Scalar s ? s.text() : node instanceof Items ? "a list" : "keys";
    }

    private static String shown(Node node) {
        return node instanceof Scalar s ? Problems.quoted(s.text()) : "a list";
    }

    private void missing(Field field, Place place) {
        problems.add(
                Problem.Kind.MISSING,
                place,
                "",
                "the key " + field.key() + " is missing: " + field.meaning(),
                field.example(),
                "Add a line like " + field.key() + ": " + field.example() + ".");
    }

    private void unknownKey(String key, Entry entry, Shape.Group form) {
        if (problems.full()) {
            problems.countOne();
            return;
        }
        String shown = Problems.shortened(key);
        String remedy = key.indexOf(':') >= 0
                ? "Write key: value, with a blank behind the colon."
                : elsewhere(key, form)
                        .or(() -> Spelling.nearest(shown, form.keys()).map(near -> "Nearest: " + near + "."))
                        .or(() -> section(key, form))
                        .orElse("Known here: " + String.join(", ", form.keys()) + ".");
        problems.add(
                Problem.Kind.UNKNOWN_KEY,
                entry.place(),
                key,
                "this key is not known",
                String.join(", ", form.keys()),
                remedy);
    }

    /** Whether the key belongs into a group around or below this one. */
    private Optional<String> elsewhere(String key, Shape.Group form) {
        Optional<String> below = form.fields().stream()
                .filter(f -> f.shape() instanceof Shape.Group g && g.field(key).isPresent())
                .map(f -> "Put it under " + f.key() + ".")
                .findFirst();
        boolean above = around.stream().skip(1).anyMatch(g -> g.field(key).isPresent());
        return below.or(() -> above ? Optional.of("Put it one level up.") : Optional.empty());
    }

    /** The section whose parts take the key. */
    private static Optional<String> section(String key, Shape.Group form) {
        return form.fields().stream()
                .filter(f -> f.shape() instanceof Shape.Named n
                        && n.each() instanceof Shape.Group g
                        && g.field(key).isPresent())
                .map(f -> "Put it under " + f.key() + ", below a name of your own.")
                .findFirst();
    }
}
