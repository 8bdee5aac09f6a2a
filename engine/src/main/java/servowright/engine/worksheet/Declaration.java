package servowright.engine.worksheet;

import java.util.List;
import java.util.Optional;

/**
 * What a worksheet takes and gives.
 *
 * @param name    as it is typed, lower case with hyphens
 * @param title   a few words
 * @param about   one or two sentences: what it answers and what it leaves out
 * @param inputs  in the order a person would have them at hand
 * @param results in the order of interest
 * @param sources author, title, year, equation or table
 */
public record Declaration(
        String name, String title, String about, List<Input> inputs, List<Result> results, List<String> sources) {
    public Declaration {
        inputs = List.copyOf(inputs);
        results = List.copyOf(results);
        sources = List.copyOf(sources);
    }

    /** The input of that name. */
    public Optional<Input> input(String inputName) {
        return inputs.stream().filter(i -> i.name().equals(inputName)).findFirst();
    }

    /** The result of that name. */
    public Optional<Result> result(String resultName) {
        return results.stream().filter(r -> r.name().equals(resultName)).findFirst();
    }
}
