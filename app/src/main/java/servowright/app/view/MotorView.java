package servowright.app.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.known.Known;
import servowright.engine.known.Source;

/** What is known of a motor. */
public record MotorView(String name, List<ParameterView> parameters, List<ContradictionView> contradictions) {
    /**
     * A parameter with everything that speaks for it.
     *
     * @param best       the value that predictions use, if there is one
     * @param from       origin and place of the best value; empty without one
     * @param needs      what would give one; empty when there is one
     * @param candidates every value there is, the best first
     * @param budget     where its uncertainty comes from, largest share first; at most three lines
     */
    public record ParameterView(
            String words,
            String symbol,
            Optional<FigureText> best,
            String from,
            List<NeedView> needs,
            List<CandidateView> candidates,
            List<Share> budget) {}

    /** One value of a parameter. */
    public record CandidateView(FigureText figure, String from, String origin, List<WorkingText> working) {}

    /** How much of the variance one source makes: {@code spin hub 1, speed} and {@code 83 %}. */
    public record Share(String source, String share) {}

    /** Two values that cannot both be right. */
    public record ContradictionView(
            String parameter, CandidateView first, CandidateView second, FigureText ratio, String factor) {
        /** {@code label 12 against spin hub 1 11: ratio 0.917}. */
        public String text() {
            return parameter + ": " + first.from() + " says " + first.figure().text() + ", " + second.from() + " says "
                    + second.figure().text() + "; ratio " + ratio.text() + (factor.isEmpty() ? "" : " = " + factor);
        }
    }

    private static final int BUDGET_LINES = 3;

    public MotorView {
        parameters = List.copyOf(parameters);
        contradictions = List.copyOf(contradictions);
    }

    static MotorView of(IdentifiedMotor motor) {
        return new MotorView(
                motor.name(),
                motor.parameters().values().stream().map(MotorView::parameter).toList(),
                motor.contradictions().stream().map(MotorView::contradiction).toList());
    }

    private static ParameterView parameter(Parameter parameter) {
        MotorParameter what = parameter.what();
        Optional<FigureText> best = parameter.best().found().map(k -> FigureText.of(k, what.unit()));
        return new ParameterView(
                what.words(),
                what.symbol(),
                best,
                best.map(WorkingText::from).orElse(""),
                parameter
                        .best()
                        .fold(
                                a -> List.of(),
                                m -> m.needs().stream().map(NeedView::of).toList()),
                parameter.candidates().stream()
                        .map(c -> candidate(c, what.unit()))
                        .toList(),
                best.map(b -> budget(b.known())).orElse(List.of()));
    }

    static CandidateView candidate(Candidate candidate, String unit) {
        return new CandidateView(
                FigureText.of(candidate.value(), unit),
                candidate.from(),
                candidate.value().origin().words(),
                WorkingText.of(candidate.working()));
    }

    private static ContradictionView contradiction(Contradiction c) {
        String unit = c.parameter().unit();
        return new ContradictionView(
                c.parameter().words(),
                candidate(c.first(), unit),
                candidate(c.second(), unit),
                FigureText.of(c.ratio(), ""),
                c.factor().orElse(""));
    }

    private static List<Share> budget(Known known) {
        Map<String, Double> squares = new TreeMap<>();
        double sum = 0;
        for (Map.Entry<Source, Double> part : known.parts().entrySet()) {
            double square = part.getValue() * part.getValue();
            squares.merge(part.getKey().group(), square, Double::sum);
            sum += square;
        }
        double all = sum;
        List<Map.Entry<String, Double>> sorted = new ArrayList<>(squares.entrySet());
        sorted.sort(Map.Entry.<String, Double>comparingByValue(Comparator.reverseOrder())
                .thenComparing(Map.Entry.comparingByKey()));
        return sorted.stream()
                .filter(e -> e.getValue() > 0.005 * all)
                .limit(BUDGET_LINES)
                .map(e -> new Share(e.getKey(), Math.round(100 * e.getValue() / all) + " %"))
                .toList();
    }
}
