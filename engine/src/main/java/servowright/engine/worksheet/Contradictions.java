package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;

/** What cannot be true together, while it is gathered. */
public final class Contradictions {
    private final Declaration declaration;
    private final List<Problem> problems = new ArrayList<>();

    public Contradictions(Declaration declaration) {
        this.declaration = declaration;
    }

    /** Adds a problem at an input if {@code so}. */
    public Contradictions when(boolean so, String input, String statement, String remedy) {
        if (so) {
            problems.add(new Problem(
                    Problem.Kind.CONTRADICTION,
                    new Place(declaration.name(), 0, input),
                    "",
                    statement,
                    declaration.input(input).map(Input::example).orElse(""),
                    remedy));
        }
        return this;
    }

    public List<Problem> problems() {
        return List.copyOf(problems);
    }
}
