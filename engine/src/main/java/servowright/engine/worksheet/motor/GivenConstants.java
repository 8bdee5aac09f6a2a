package servowright.engine.worksheet.motor;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.ConstantsClosure;
import servowright.engine.motor.ConstantsClosure.Candidate;
import servowright.engine.motor.ConstantsClosure.Disagreement;
import servowright.engine.motor.ConstantsClosure.Suspect;
import servowright.engine.motor.MotorConstants;
import servowright.engine.motor.PolePairs;
import servowright.engine.motor.RatioName;
import servowright.engine.motor.StatedConstant;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Side;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Inputs;

/**
 * The motor constants given to a worksheet, on their likeliest bases.
 *
 * @param figures what was given, in the order of the declaration
 * @param closure the readings of them, best first; of no figure there is none
 */
record GivenConstants(List<Figure> figures, Optional<ConstantsClosure> closure, List<Known> unplacedFlux) {
    /**
     * Relative standard uncertainty of a figure that states none (own choice): two such figures then disagree from 4.2 %
     * on, which is less than the smallest step between two bases, π/3 = 4.7 %.
     */
    private static final double USUAL = 0.015;

    /** So many readings of figures without basis are shown. */
    private static final int SHOWN = 5;

    /**
     * One figure.
     *
     * @param words  what it is called in a sentence
     * @param term   the figure at the motor shaft
     * @param stated the same for the closure
     */
    record Figure(String words, Term term, StatedConstant stated) {}

    static GivenConstants of(Calculation c, GivenPoles poles) {
        List<Figure> figures = new ArrayList<>();
        for (StatedConstant.Kind kind : StatedConstant.Kind.values()) {
            String input = kind.name().toLowerCase(Locale.ROOT);
            int several = c.inputs().all(input).size();
            for (int n = 0; n < several; n++) {
                boolean placed = kind != StatedConstant.Kind.FLUX_LINKAGE
                        || poles.number().isPresent();
                if (placed) {
                    String words = kind.words() + (several > 1 ? " (" + (n + 1) + ")" : "");
                    figures.add(figure(c, kind, input, n, words, poles.number().orElse(1)));
                }
            }
        }
        List<Known> unplaced = poles.number().isPresent()
                ? List.of()
                : c.inputs().all("flux_linkage").stream()
                        .flatMap(v -> v.known().stream())
                        .toList();
        Optional<ConstantsClosure> closure = figures.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        ConstantsClosure.of(figures.stream().map(Figure::stated).toList()));
        return new GivenConstants(List.copyOf(figures), closure, unplaced);
    }

    private static Figure figure(
            Calculation c, StatedConstant.Kind kind, String input, int n, String words, int polePairs) {
        Inputs.Value value = c.inputs().all(input).get(n);
        boolean load = value.stated()
                .flatMap(s -> s.side())
                .filter(s -> s == Side.LOAD)
                .isPresent();
        Term term = load ? atMotor(c, input, n) : c.given(symbol(kind), input, n);
        Known known = term.value();
        double u = known.standardUncertainty() > 0 ? known.relativeUncertainty() : USUAL;
        int p = kind == StatedConstant.Kind.FLUX_LINKAGE ? polePairs : 1;
        StatedConstant open = new StatedConstant(kind, known.si(), p, List.of(ConstantBasis.of(CurrentBasis.Q_AXIS)), u)
                .withBasisOpen();
        StatedConstant stated = value.stated()
                .flatMap(s -> s.voltageBasis()
                        .filter(b -> kind != StatedConstant.Kind.TORQUE_CONSTANT)
                        .map(ConstantBasis::of)
                        .or(() -> s.currentBasis().map(ConstantBasis::of)))
                .map(basis -> new StatedConstant(kind, known.si(), p, List.of(basis), u))
                .orElse(open);
        return new Figure(words, term, stated);
    }

    private static Term atMotor(Calculation c, String input, int n) {
        return c.step(
                "torque constant at the motor shaft",
                "{Kt} = {Kt load} / {gear}",
                "N m/A",
                "torque over a gear without loss",
                x -> x[0] / x[1],
                c.given("Kt load", input, n),
                c.given("gear", "gear"));
    }

    private static String symbol(StatedConstant.Kind kind) {
        return switch (kind) {
            case SPEED_CONSTANT -> "Kv";
            case EMF_CONSTANT -> "Ke";
            case TORQUE_CONSTANT -> "Kt";
            case FLUX_LINKAGE -> "λ";
        };
    }

    boolean isEmpty() {
        return figures.isEmpty();
    }

    private ConstantsClosure closed() {
        return closure.orElseThrow();
    }

    /**
     * Pole pairs times flux linkage: of one figure what it gives, of several their weighted mean. With no figure the
     * calculation is told what is missing.
     */
    Optional<Term> common(Calculation c) {
        if (isEmpty()) {
            c.needs(
                    false,
                    "a speed, back-EMF or torque constant, or a flux linkage with the pole pairs",
                    "take it from the label, or spin the motor and read the voltage between two terminals");
            return Optional.empty();
        }
        List<Term> each = new ArrayList<>();
        for (int i = 0; i < figures.size(); i++) {
            each.add(pLambda(c, i));
            if (!figures.get(i).stated().basisStated()) {
                c.assume(Phrase.of(
                        "basis of the " + figures.get(i).words() + " not stated: read as " + basis(i).words()));
            }
        }
        if (each.size() == 1) {
            return Optional.of(each.get(0));
        }
        String symbols = each.stream().map(t -> "{" + t.symbol() + "}").collect(Collectors.joining(", "));
        return Optional.of(c.step(
                "pole pairs times flux linkage, common to the figures",
                "{pλ} = weighted mean of " + symbols,
                "V s/rad",
                Citations.MEAN_OF_LOGS,
                this::mean,
                each.toArray(Term[]::new)));
    }

    /** The figures with the basis each was read on, in words. */
    String reading() {
        return IntStream.range(0, figures.size())
                .mapToObj(i -> figures.get(i).words() + " " + basis(i).words())
                .collect(Collectors.joining(", "));
    }

    private double mean(double[] pLambdas) {
        List<StatedConstant> plain = new ArrayList<>();
        for (int i = 0; i < pLambdas.length; i++) {
            // Per q-axis ampere a torque constant is 3/2 pλ: any fixed basis serves to hand the figure over.
            ConstantBasis basis = ConstantBasis.of(CurrentBasis.Q_AXIS);
            plain.add(new StatedConstant(
                    StatedConstant.Kind.TORQUE_CONSTANT,
                    pLambdas[i] * basis.perFlux(),
                    1,
                    List.of(basis),
                    figures.get(i).stated().relativeUncertainty()));
        }
        return ConstantsClosure.of(plain).best().motor().emfPhasePeakVoltSecondPerRad();
    }

    private Term pLambda(Calculation c, int i) {
        Figure figure = figures.get(i);
        StatedConstant stated = figure.stated();
        ConstantBasis basis = basis(i);
        String result = figures.size() == 1 ? "pλ" : "pλ " + (i + 1);
        String symbol = figure.term().symbol();
        String factor = Bases.perFlux(basis);
        String divisor = factor.contains("/") ? "(" + factor + ")" : factor;
        String formula = "{" + result + "} = "
                + switch (stated.kind()) {
                    case SPEED_CONSTANT -> "1 / (" + factor + " · {" + symbol + "})";
                    case EMF_CONSTANT, TORQUE_CONSTANT -> "{" + symbol + "} / " + divisor;
                    case FLUX_LINKAGE -> "{p} · {" + symbol + "} / " + divisor;
                };
        Known polePairs = Known.number(stated.polePairs(), Origin.DERIVED, "pole pairs");
        Term[] terms = stated.kind() == StatedConstant.Kind.FLUX_LINKAGE
                ? new Term[] {figure.term(), Term.of("p", polePairs)}
                : new Term[] {figure.term()};
        return c.step(
                "pole pairs times flux linkage from the " + figure.words() + ", " + basis.words(),
                formula,
                "V s/rad",
                Citations.POWER_BALANCE,
                x -> new StatedConstant(
                                stated.kind(), x[0], stated.polePairs(), List.of(basis), stated.relativeUncertainty())
                        .on(basis)
                        .emfPhasePeakVoltSecondPerRad(),
                terms);
    }

    private ConstantBasis basis(int i) {
        return closed().best().bases().get(i);
    }

    /** What pole pairs a flux linkage implies when none were given. */
    void impliedPolePairs(Calculation c, Term pLambda) {
        for (Known flux : unplacedFlux) {
            PolePairs.Count count =
                    PolePairs.fromFluxLinkage(new MotorConstants(pLambda.value().si()), flux.si());
            if (count instanceof PolePairs.Accepted accepted) {
                c.result(
                        "pole_pairs_implied",
                        "{p} = {pλ} / {λ}, rounded",
                        "definition of the flux linkage, phase peak; accepted within 2 % of a whole number (common practice)",
                        x -> accepted.polePairs(),
                        pLambda,
                        Term.of("λ", flux, "mWb"));
            } else {
                c.remark(Phrase.of(
                                "flux linkage {flux} left out: without pole pairs it says nothing, and the ratio {ratio}"
                                        + " is not near a whole number")
                        .with("flux", flux, "mWb")
                        .with("ratio", pLambda.value().over(flux)));
            }
        }
    }

    /** Says how well the figures agree, on which bases they were read, and what hangs on it. */
    void judge(Calculation c, GivenPoles poles, Term pLambda) {
        ConstantsClosure closed = closed();
        if (figures.size() > 1) {
            List<RatioName> own = new ArrayList<>();
            poles.number().filter(p -> p > 1).ifPresent(p -> own.add(RatioName.polePairs(p)));
            c.inputs().known("gear").filter(g -> g.si() != 1).ifPresent(g -> own.add(RatioName.gear(g.si())));
            List<Disagreement> found = closed.disagreements(ConstantsClosure.NAME_TOLERANCE, own);
            c.result(
                    "spread",
                    "{spread} = largest |pλ i / {pλ} − 1|",
                    Citations.MEAN_OF_LOGS,
                    x -> closed.best().worstOff(),
                    pLambda);
            c.word("agreement", found.isEmpty() ? "one motor" : "not one motor");
            found.forEach(d -> c.remark(disagreement(d)));
            if (!found.isEmpty()) {
                closed.suspects().forEach(s -> c.remark(suspect(s)));
            }
        }
        if (figures.stream().anyMatch(f -> !f.stated().basisStated())) {
            openBases(c, closed);
        }
    }

    private Phrase disagreement(Disagreement d) {
        String names = d.names().stream()
                .map(m -> m.words() + " (" + m.name().meaning() + ")")
                .collect(Collectors.joining("; or "));
        String tail = names.isEmpty() ? "no usual ratio is near" : "near " + names;
        return Phrase.of("the " + figures.get(d.first()).words() + " gives {ratio} times the flux of the "
                        + figures.get(d.second()).words() + ": " + tail)
                .with("ratio", d.ratio());
    }

    private Phrase suspect(Suspect s) {
        String basis = s.closing().bases().get(s.figure()).words();
        return Phrase.of("read as " + basis + ", the " + figures.get(s.figure()).words()
                        + " would agree with the others within {off}")
                .with("off", Quantity.number(s.closing().worstOff()), "%");
    }

    private void openBases(Calculation c, ConstantsClosure closed) {
        for (Candidate candidate : closed.candidates().stream().limit(SHOWN).toList()) {
            String words = IntStream.range(0, figures.size())
                    .filter(i -> !figures.get(i).stated().basisStated())
                    .mapToObj(i -> figures.get(i).words() + " "
                            + candidate.bases().get(i).words())
                    .collect(Collectors.joining(", "));
            Phrase phrase = Phrase.of(
                    figures.size() == 1
                            ? words + ": {torque} per q-axis ampere"
                            : words + ": off by {off}, {torque} per q-axis ampere");
            double torque = candidate.motor().torqueConstant(CurrentBasis.Q_AXIS);
            phrase = phrase.with("torque", Quantity.of(torque, "N m/A"), "N m/A");
            c.remark(figures.size() == 1 ? phrase : phrase.with("off", Quantity.number(candidate.worstOff()), "%"));
        }
    }
}
