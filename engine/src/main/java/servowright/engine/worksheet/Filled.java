package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.known.Source;
import servowright.engine.quantity.ParsedQuantity;
import servowright.engine.quantity.ParsedQuantity.Malformed;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Stated;

/** A worksheet's inputs as typed, checked against its declaration: ready to compute, or every problem at once. */
public sealed interface Filled {
    /** Inputs that can be computed with. */
    record Ready(Inputs inputs) implements Filled {}

    /** Inputs that cannot, with all reasons. */
    record Refused(List<Problem> problems) implements Filled {
        public Refused {
            problems = List.copyOf(problems);
        }
    }

    /** Checks what was typed against the declaration, and then whether it can be true together. */
    static Filled of(Worksheet sheet, Map<String, List<String>> given) {
        Filled filled = of(sheet.declaration(), given);
        if (filled instanceof Ready ready) {
            List<Problem> contradictions = sheet.contradictions(ready.inputs());
            return contradictions.isEmpty() ? filled : new Refused(contradictions);
        }
        return filled;
    }

    /**
     * Checks what was typed against the declaration alone.
     *
     * @param given per input name what was typed, in order; unknown names become problems
     */
    static Filled of(Declaration declaration, Map<String, List<String>> given) {
        return new Check(declaration).fill(given);
    }

    /** One check of one set of inputs. */
    final class Check {
        /** A comma alone may be a decimal one. */
        private static final Pattern PARTS = Pattern.compile("\\s*;\\s*|,\\s+");

        private final Declaration declaration;
        private final List<Problem> problems = new ArrayList<>();

        private Check(Declaration declaration) {
            this.declaration = declaration;
        }

        private Filled fill(Map<String, List<String>> given) {
            given.keySet().stream()
                    .filter(name -> declaration.input(name).isEmpty())
                    .forEach(this::unknown);
            Map<String, List<Inputs.Value>> values = new LinkedHashMap<>();
            for (Input input : declaration.inputs()) {
                boolean typed = given.containsKey(input.name());
                List<String> texts = given.getOrDefault(input.name(), fallback(input));
                List<Inputs.Value> read = new ArrayList<>();
                if (texts.size() > 1 && !input.several()) {
                    add(Problem.Kind.CONTRADICTION, input, texts.get(1), "it is given twice", "Give it once.");
                }
                for (int i = 0; i < texts.size(); i++) {
                    value(input, texts.get(i), i, typed).ifPresent(read::add);
                }
                if (!read.isEmpty()) {
                    values.put(input.name(), List.copyOf(read));
                }
            }
            return problems.isEmpty() ? new Ready(new Inputs(values)) : new Refused(problems);
        }

        private static List<String> fallback(Input input) {
            return input.fallback().isEmpty() ? List.of() : List.of(input.fallback());
        }

        private Optional<Inputs.Value> value(Input input, String text, int index, boolean typed) {
            return switch (input.kind()) {
                case CHOICE -> choice(input, text, typed);
                case TEXT -> text(input, text, typed);
                case ROW -> row(input, text, index);
                case QUANTITY, WHOLE_NUMBER -> quantity(input, text, index, typed);
            };
        }

        private Optional<Inputs.Value> text(Input input, String text, boolean typed) {
            if (text.isBlank()) {
                add(Problem.Kind.MISSING, input, text, "it is empty", "Write it like " + input.example() + ".");
                return Optional.empty();
            }
            return Optional.of(Inputs.Value.word(text.strip(), typed));
        }

        /** The parts of a row in the order of its columns; what is wrong names the row and the part. */
        private Optional<Inputs.Value> row(Input input, String text, int index) {
            String[] parts = PARTS.split(text.strip(), -1);
            if (parts.length > input.columns().size()) {
                String names = input.columns().stream().map(Input::name).collect(Collectors.joining(", "));
                String says = quoted(text) + " has " + parts.length + " parts";
                add(Problem.Kind.NOT_ALLOWED_HERE, input, text, says, "Known are " + names + ".");
                return Optional.empty();
            }
            Map<String, Inputs.Value> cells = new LinkedHashMap<>();
            for (int i = 0; i < parts.length; i++) {
                Input column = input.columns().get(i);
                String place = input.name() + " " + (index + 1) + " " + column.name();
                value(column.named(place), parts[i], 0, true).ifPresent(cell -> cells.put(column.name(), cell));
            }
            return cells.size() == parts.length ? Optional.of(Inputs.Value.row(text, cells)) : Optional.empty();
        }

        private Optional<Inputs.Value> quantity(Input input, String text, int index, boolean typed) {
            ParsedQuantity parsed = QuantityText.parse(text);
            if (parsed instanceof Malformed m) {
                add(Problem.Kind.NOT_A_QUANTITY, input, text, quoted(text) + ": " + m.reason(), sentence(m.remedy()));
                return Optional.empty();
            }
            Stated stated = (Stated) parsed;
            if (!suits(input, text, stated)) {
                return Optional.empty();
            }
            String place = input.name() + (index > 0 ? " (" + (index + 1) + ")" : "");
            return Optional.of(new Inputs.Value(
                    text,
                    Optional.of(stated),
                    Optional.of(known(stated, place, typed ? origin(stated) : Origin.ASSUMED)),
                    typed,
                    Map.of()));
        }

        private boolean suits(Input input, String text, Stated stated) {
            int before = problems.size();
            if (!input.allowed().contains(stated.dimension())) {
                add(
                        Problem.Kind.WRONG_UNIT,
                        input,
                        text,
                        quoted(text) + " measures something else than " + input.meaning(),
                        "Write it like " + input.example() + ".");
            } else if (input.kind() == Input.Kind.WHOLE_NUMBER
                    && stated.nominal().si() != Math.rint(stated.nominal().si())) {
                add(Problem.Kind.OUT_OF_RANGE, input, text, quoted(text) + " is no whole number", "");
            } else if (input.range().filter(r -> outside(r, stated)).isPresent()) {
                Input.Range r = input.range().get();
                String allowed = inUnit(r.least().si(), stated) + " to "
                        + inUnit(r.most().si(), stated);
                problems.add(new Problem(
                        Problem.Kind.OUT_OF_RANGE,
                        place(input),
                        text,
                        quoted(text) + " lies outside " + allowed,
                        allowed,
                        "Check the unit."));
            }
            suitsBasis(input, stated);
            return problems.size() == before;
        }

        private void suitsBasis(Input input, Stated stated) {
            List<String> bases =
                    stated.qualifiers().stream().filter(Basis.ALL::contains).toList();
            String known = input.bases().isEmpty()
                    ? "This figure has no basis."
                    : "Known here: " + String.join(", ", input.bases()) + ".";
            for (String word : stated.unknownQualifiers()) {
                String near = Spelling.nearest(word, input.bases())
                        .map(n -> "Nearest: " + n + ".")
                        .orElse(known);
                add(Problem.Kind.NOT_ALLOWED_HERE, input, word, "[" + word + "] is not known", near);
            }
            for (String word : bases) {
                if (!input.bases().contains(word)) {
                    String says = "[" + word + "] is no basis of this figure";
                    add(Problem.Kind.NOT_ALLOWED_HERE, input, word, says, known);
                }
            }
            for (List<String> kind : List.of(Basis.both(Basis.VOLTAGE, Basis.CURRENT), Basis.HOOK_UP, Basis.SIDE)) {
                List<String> same = bases.stream().filter(kind::contains).toList();
                if (same.size() > 1) {
                    String says = "it has two bases, " + String.join(" and ", same);
                    add(Problem.Kind.CONTRADICTION, input, same.get(1), says, "Keep one of them.");
                }
            }
        }

        private static boolean outside(Input.Range range, Stated stated) {
            return range.least().dimension().equals(stated.dimension())
                    && !(stated.lower().si() >= range.least().si()
                            && stated.upper().si() <= range.most().si());
        }

        private static String inUnit(double si, Stated stated) {
            double number = stated.unit().fromSi(si);
            String digits = number == Math.rint(number) && Math.abs(number) < 1e7
                    ? String.valueOf((long) number)
                    : String.valueOf((float) number);
            return (digits + " " + stated.unit().symbol()).strip();
        }

        private Optional<Inputs.Value> choice(Input input, String text, boolean typed) {
            if (input.choices().contains(text.strip())) {
                return Optional.of(Inputs.Value.word(text.strip(), typed));
            }
            String near = Spelling.nearest(text, input.choices())
                    .map(n -> " Nearest: " + n + ".")
                    .orElse("");
            add(
                    Problem.Kind.UNKNOWN_NAME,
                    input,
                    text,
                    quoted(text) + " is not one of " + String.join(", ", input.choices()),
                    near.strip());
            return Optional.empty();
        }

        private void unknown(String name) {
            List<String> names = declaration.inputs().stream().map(Input::name).toList();
            String remedy = Spelling.nearest(name, names)
                    .map(n -> "Nearest: " + n + ".")
                    .orElse("Known: " + String.join(", ", names) + ".");
            problems.add(new Problem(
                    Problem.Kind.UNKNOWN_KEY,
                    new Place(declaration.name(), 0, name),
                    name,
                    "this input is not known",
                    String.join(", ", names),
                    remedy));
        }

        private void add(Problem.Kind kind, Input input, String given, String statement, String remedy) {
            problems.add(new Problem(kind, place(input), given, statement, input.example(), remedy));
        }

        private Place place(Input input) {
            return new Place(declaration.name(), 0, input.name());
        }

        private static Origin origin(Stated stated) {
            return stated.origin()
                    .map(o -> switch (o) {
                        case LABEL, DATA_SHEET -> Origin.DATA_SHEET;
                        case MEASURED -> Origin.MEASURED;
                        case GUESS -> Origin.ASSUMED;
                    })
                    .orElse(Origin.DECLARED);
        }

        private static Known known(Stated stated, String from, Origin origin) {
            double u = stated.spread() == Stated.Spread.TOLERANCE
                    ? (stated.upper().si() - stated.lower().si()) / 2 / Math.sqrt(3)
                    : 0;
            return Known.of(stated.nominal(), u, Source.of("input " + from), origin, from);
        }

        private static String quoted(String text) {
            return text.length() > 60 ? "\"" + text.substring(0, 57) + "...\"" : "\"" + text + "\"";
        }

        private static String sentence(String text) {
            String first = text.isEmpty() ? "" : Character.toUpperCase(text.charAt(0)) + text.substring(1);
            return first.endsWith("?") || first.isEmpty() ? first : first + ".";
        }
    }
}
