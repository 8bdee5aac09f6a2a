package servowright.app.input.schema;

import java.util.List;
import servowright.app.input.form.Field;
import servowright.app.input.form.Shape;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Dimension;
import tools.jackson.core.util.DefaultIndenter;
import tools.jackson.core.util.DefaultPrettyPrinter;
import tools.jackson.databind.SerializationFeature;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.JsonNodeFactory;
import tools.jackson.databind.node.ObjectNode;

/**
 * A form as JSON Schema, draft 2020-12, so that editors complete keys, show what they mean and mark what cannot stand. It
 * accepts everything that the program accepts; units, ranges and what contradicts each other only the program knows.
 */
final class Schema {
    private static final String NUMBER = "[+\u2212-]?(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)";
    private static final String BRACKETS = "(?:\\s*\\[[^\\[\\]]*\\])?";
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private Schema() {}

    /** The schema of a file as text. */
    static String text(String file, String about, Shape.Group form) {
        ObjectNode schema = NODES.objectNode();
        schema.put("$schema", "https://json-schema.org/draft/2020-12/schema");
        schema.put("title", file);
        schema.put("description", about);
        schema.setAll(shape(form, ""));
        DefaultIndenter lines = new DefaultIndenter("  ", "\n");
        DefaultPrettyPrinter printer =
                new DefaultPrettyPrinter().withObjectIndenter(lines).withArrayIndenter(new DefaultIndenter("", " "));
        return JsonMapper.builder()
                        .defaultPrettyPrinter(printer)
                        .enable(SerializationFeature.INDENT_OUTPUT)
                        .build()
                        .writeValueAsString(schema)
                + "\n";
    }

    private static ObjectNode field(Field field) {
        ObjectNode node = shape(field.shape(), field.example());
        StringBuilder words = new StringBuilder(field.meaning());
        String allowed = FieldWords.allowed(field.shape());
        if (!allowed.isEmpty()) {
            words.append(". Allowed: ").append(allowed);
        }
        String brackets = FieldWords.brackets(field.shape());
        if (!brackets.isEmpty()) {
            words.append(". In square brackets: ").append(brackets);
        }
        ObjectNode described = NODES.objectNode();
        described.put("description", words.append('.').toString());
        if (!field.example().isEmpty()) {
            described.putArray("examples").add(field.example());
        }
        described.setAll(node);
        return described;
    }

    private static ObjectNode shape(Shape shape, String example) {
        if (shape instanceof Shape.Group group) {
            return group(group);
        }
        if (shape instanceof Shape.Named named) {
            ObjectNode node = typed("object", "null");
            node.set("additionalProperties", shape(named.each(), example));
            return node;
        }
        if (shape instanceof Shape.Listed listed) {
            ObjectNode node = typed("array", "null");
            node.set("items", shape(listed.each(), example));
            return node;
        }
        if (shape instanceof Shape.Figure figure) {
            return figure(figure);
        }
        if (shape instanceof Shape.Choice choice) {
            ObjectNode node = NODES.objectNode();
            ArrayNode words = node.putArray("enum");
            choice.words().forEach(words::add);
            words.add("unknown").addNull();
            return node;
        }
        return words(shape);
    }

    private static ObjectNode words(Shape shape) {
        if (shape instanceof Shape.Limits) {
            return typed("string", "null").put("pattern", "^\\s*(?:unknown|(?:\u00b1|\\+/-|\\+)?\\s*\\(?\\d.*)$");
        }
        ObjectNode node = typed("string", "number", "boolean", "null");
        if (shape instanceof Shape.Words words) {
            words.form().ifPresent(f -> node.put("pattern", "^\\s*(?:unknown|" + f.pattern() + ")\\s*$"));
        }
        return node;
    }

    private static ObjectNode group(Shape.Group group) {
        ObjectNode node = typed("object", "null");
        ObjectNode properties = node.putObject("properties");
        group.fields().forEach(f -> properties.set(f.key(), field(f)));
        node.put("additionalProperties", false);
        if (group.fields().stream().anyMatch(Field::required)) {
            ArrayNode required = node.putArray("required");
            group.fields().stream().filter(Field::required).forEach(f -> required.add(f.key()));
        }
        conditions(node, group);
        return node;
    }

    /** Keys that are needed because another key says so. */
    private static void conditions(ObjectNode node, Shape.Group group) {
        List<Field> asked =
                group.fields().stream().filter(f -> f.with().isPresent()).toList();
        if (asked.isEmpty()) {
            return;
        }
        ArrayNode all = node.putArray("allOf");
        for (Field field : asked) {
            Field.With with = field.with().orElseThrow();
            ObjectNode one = all.addObject();
            ObjectNode condition = one.putObject("if");
            ArrayNode words =
                    condition.putObject("properties").putObject(with.key()).putArray("enum");
            with.said().forEach(words::add);
            condition.putArray("required").add(with.key());
            one.putObject("then").putArray("required").add(field.key());
        }
    }

    private static ObjectNode figure(Shape.Figure figure) {
        Key key = figure.key();
        String other = String.join("|", figure.words());
        String words = "^\\s*(?:unknown|" + (other.isEmpty() ? "" : other + "|");
        ObjectNode one;
        if (key.whole()) {
            one = typed("string", "integer", "null").put("pattern", words + "\\d+" + BRACKETS + ")\\s*$");
            limits(one, key);
        } else if (key.dimension().equals(Dimension.NUMBER)) {
            one = typed("string", "number", "null").put("pattern", words + NUMBER + "[^\\[\\]]*" + BRACKETS + ")\\s*$");
            limits(one, key);
        } else {
            one = typed("string", "null").put("pattern", words + NUMBER + "[^\\[\\]]*" + BRACKETS + ")\\s*$");
        }
        if (!key.several()) {
            return one;
        }
        ObjectNode list = typed("array");
        list.set("items", one.deepCopy());
        ObjectNode either = NODES.objectNode();
        either.putArray("anyOf").add(one).add(list);
        return either;
    }

    private static void limits(ObjectNode node, Key key) {
        node.put("minimum", key.least().si());
        node.put("maximum", key.most().si());
    }

    private static ObjectNode typed(String... types) {
        ObjectNode node = NODES.objectNode();
        if (types.length == 1) {
            return node.put("type", types[0]);
        }
        ArrayNode all = node.putArray("type");
        for (String type : types) {
            all.add(type);
        }
        return node;
    }
}
