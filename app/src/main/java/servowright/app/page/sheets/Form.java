package servowright.app.page.sheets;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import servowright.app.page.Asked;
import servowright.app.view.SheetView;
import servowright.engine.known.Problem;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Worksheet;

/**
 * A worksheet with what was typed into it.
 *
 * @param given    per input what was typed; inputs left empty are not there
 * @param result   what came out; empty when nothing was typed or something is wrong
 * @param problems with what was typed
 */
public record Form(
        Declaration sheet, Map<String, List<String>> given, Optional<SheetView> result, List<Problem> problems) {
    public Form {
        given = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(given));
        problems = List.copyOf(problems);
    }

    /** Works the sheet with what was typed. */
    public static Callable<Form> filled(Worksheet worksheet, Map<String, List<String>> typed) {
        Map<String, List<String>> given = new LinkedHashMap<>();
        typed.forEach((name, values) -> {
            List<String> some =
                    values.stream().map(String::strip).filter(v -> !v.isEmpty()).toList();
            if (!some.isEmpty()) {
                given.put(name, some);
            }
        });
        Declaration sheet = worksheet.declaration();
        return () -> {
            if (given.isEmpty()) {
                return new Form(sheet, given, Optional.empty(), List.of());
            }
            Filled filled = Filled.of(worksheet, given);
            if (filled instanceof Filled.Refused refused) {
                return new Form(sheet, given, Optional.empty(), refused.problems());
            }
            SheetView view = SheetView.of(sheet, worksheet.compute(((Filled.Ready) filled).inputs()));
            return new Form(sheet, given, Optional.of(view), List.of());
        };
    }

    /** What stands in the fields of an input: one field, or for a repeatable input one more than was typed. */
    public List<String> fields(Input input) {
        List<String> typed = given.getOrDefault(input.name(), List.of());
        if (!input.several()) {
            return List.of(typed.isEmpty() ? "" : typed.get(0));
        }
        List<String> fields = new java.util.ArrayList<>(typed);
        fields.add("");
        return fields;
    }

    /** What is wrong with one input. */
    public List<Problem> problems(Input input) {
        return problems.stream()
                .filter(p -> p.place().path().equals(input.name()))
                .toList();
    }

    /** What is wrong with no input in particular. */
    public List<Problem> others() {
        return problems.stream()
                .filter(p -> sheet.input(p.place().path()).isEmpty())
                .toList();
    }

    /** What an input takes, in words. */
    public static String takes(Input input) {
        StringBuilder says =
                new StringBuilder(input.kind() == Input.Kind.CHOICE ? "" : "for example " + input.example());
        if (!input.bases().isEmpty()) {
            says.append("; stated as [")
                    .append(String.join("], [", input.bases()))
                    .append(']');
        }
        if (!input.fallback().isEmpty()) {
            says.append(says.isEmpty() ? "" : "; ")
                    .append("taken as ")
                    .append(input.fallback())
                    .append(" when empty");
        }
        return says.toString();
    }

    /** The sheet with what was typed, as an address. */
    public String address() {
        StringBuilder query = new StringBuilder();
        given.forEach((name, values) -> values.forEach(v -> query.append(query.isEmpty() ? '?' : '&')
                .append(name)
                .append('=')
                .append(Asked.encoded(v))));
        return "/sheets/" + sheet.name() + query;
    }

    /** The example of the sheet as an address. */
    public String example() {
        StringBuilder query = new StringBuilder();
        for (Input input : sheet.inputs()) {
            if (input.fallback().isEmpty() && input.kind() != Input.Kind.CHOICE) {
                query.append(query.isEmpty() ? '?' : '&').append(input.name()).append('=');
                query.append(Asked.encoded(input.example()));
            }
        }
        return "/sheets/" + sheet.name() + query;
    }
}
