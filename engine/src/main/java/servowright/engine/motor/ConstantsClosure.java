package servowright.engine.motor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * Do several stated constants describe one motor? Each figure, on each basis it may have, implies a value of p λ; the
 * combination of bases under which these values agree best is the likeliest meaning.
 *
 * <p><b>Formula.</b> With x_i = ln(p λ implied by figure i) and relative standard uncertainty u_i: x = Σ(x_i/u_i²) /
 * Σ(1/u_i²), misfit χ² = Σ((x_i − x)/u_i)². Candidates are ranked by χ²; those with equal χ² cannot be told apart by
 * closure and stand in the order of common use.
 *
 * <p><b>Valid for</b> independent figures of one motor at one magnet temperature. Back-EMF that is far from a sine moves
 * the bases against each other by up to 5 % ({@link Waveform}). <b>Source.</b> Weighted least squares in one unknown.
 *
 * @param figures    the figures, as given
 * @param candidates all combinations of bases, the best first
 */
public record ConstantsClosure(List<StatedConstant> figures, List<Candidate> candidates) {

    /** More figures than anyone has; keeps the number of combinations bounded. */
    public static final int MOST_FIGURES = 6;

    /** Two figures disagree when they differ by more than this many combined standard uncertainties. */
    public static final double COVERAGE = 2;

    /** Usual distance within which a ratio gets a name: below half of the closest spacing of the common ones. */
    public static final double NAME_TOLERANCE = 0.03;

    private static final double TIE = 1e-6;

    /** Copies the lists. */
    public ConstantsClosure {
        figures = List.copyOf(figures);
        candidates = List.copyOf(candidates);
    }

    /**
     * One reading of the figures.
     *
     * @param bases       basis of each figure, in their order
     * @param motor       the constants that fit best
     * @param chiSquare   Σ((x_i − x)/u_i)²
     * @param relativeOff each figure's p λ over the best one, less 1
     */
    public record Candidate(
            List<ConstantBasis> bases, MotorConstants motor, double chiSquare, List<Double> relativeOff) {
        /** Copies the lists. */
        public Candidate {
            bases = List.copyOf(bases);
            relativeOff = List.copyOf(relativeOff);
        }

        /** The largest departure of a figure from the fitted motor, relative, without sign. */
        public double worstOff() {
            return relativeOff.stream().mapToDouble(Math::abs).max().orElse(0);
        }
    }

    /**
     * Two figures that do not describe the same motor.
     *
     * @param first   index of the one
     * @param second  index of the other
     * @param ratio   p λ of the first over that of the second
     * @param allowed largest ratio (or its inverse) that their uncertainties explain
     * @param names   what the ratio is called, nearest first; may be empty
     */
    public record Disagreement(int first, int second, double ratio, double allowed, List<RatioName.Match> names) {}

    /**
     * A stated basis that may be wrong.
     *
     * @param figure    index of the figure
     * @param closing   the reading in which this figure alone has another basis, the best of them
     */
    public record Suspect(int figure, Candidate closing) {}

    /**
     * Ranks the readings of the figures.
     *
     * @param figures one to {@value #MOST_FIGURES} figures
     */
    public static ConstantsClosure of(List<StatedConstant> figures) {
        Require.within("number of figures", 1, MOST_FIGURES, figures.size(), "");
        List<Candidate> found = new ArrayList<>();
        combine(figures, new ArrayList<>(), found);
        // Candidates arrive in the order of common use; the sort is stable, so ties keep it.
        found.sort(Comparator.comparingLong(c -> Math.round(c.chiSquare() / TIE)));
        return new ConstantsClosure(figures, found);
    }

    /** The reading under which the figures agree best. */
    public Candidate best() {
        return candidates.get(0);
    }

    /** All readings that close exactly as well as the best: closure cannot tell them apart. */
    public List<Candidate> tied() {
        long least = Math.round(best().chiSquare() / TIE);
        return candidates.stream()
                .filter(c -> Math.round(c.chiSquare() / TIE) == least)
                .toList();
    }

    /** True if no two figures disagree under the best reading. */
    public boolean consistent() {
        return disagreements(NAME_TOLERANCE, List.of()).isEmpty();
    }

    /**
     * The pairs of figures that disagree under the best reading, each with the names of its ratio.
     *
     * @param nameTolerance relative distance within which a ratio gets a name, for example 0.03
     * @param also          further ratios of this machine to try, such as pole pairs and gear
     */
    public List<Disagreement> disagreements(double nameTolerance, List<RatioName> also) {
        List<Disagreement> found = new ArrayList<>();
        for (int i = 0; i < figures.size(); i++) {
            for (int j = i + 1; j < figures.size(); j++) {
                double ratio = implied(i) / implied(j);
                double sigma = Math.hypot(
                        figures.get(i).relativeUncertainty(), figures.get(j).relativeUncertainty());
                if (Math.abs(Math.log(ratio)) > COVERAGE * sigma) {
                    found.add(new Disagreement(
                            i, j, ratio, Math.exp(COVERAGE * sigma), RatioName.fitting(ratio, nameTolerance, also)));
                }
            }
        }
        return List.copyOf(found);
    }

    /**
     * Figures with a stated basis that close better on another one, best first. With two figures both may be suspect:
     * closure cannot say which of two witnesses errs, a third figure or a spin can.
     */
    public List<Suspect> suspects() {
        List<Suspect> found = new ArrayList<>();
        for (int i = 0; i < figures.size(); i++) {
            if (figures.get(i).basisStated()) {
                List<StatedConstant> opened = new ArrayList<>(figures);
                opened.set(i, figures.get(i).withBasisOpen());
                Candidate closing = of(opened).best();
                if (closing.chiSquare() < best().chiSquare() - TIE) {
                    found.add(new Suspect(i, closing));
                }
            }
        }
        found.sort(Comparator.comparingDouble(s -> s.closing().chiSquare()));
        return List.copyOf(found);
    }

    private double implied(int figure) {
        return figures.get(figure).on(best().bases().get(figure)).emfPhasePeakVoltSecondPerRad();
    }

    private static void combine(List<StatedConstant> figures, List<ConstantBasis> chosen, List<Candidate> found) {
        if (chosen.size() == figures.size()) {
            found.add(candidate(figures, chosen));
            return;
        }
        for (ConstantBasis basis : figures.get(chosen.size()).candidates()) {
            chosen.add(basis);
            combine(figures, chosen, found);
            chosen.remove(chosen.size() - 1);
        }
    }

    private static Candidate candidate(List<StatedConstant> figures, List<ConstantBasis> bases) {
        double[] logs = new double[figures.size()];
        double weighted = 0;
        double weights = 0;
        for (int i = 0; i < logs.length; i++) {
            StatedConstant figure = figures.get(i);
            logs[i] = Math.log(figure.on(bases.get(i)).emfPhasePeakVoltSecondPerRad());
            double weight = Math.pow(figure.relativeUncertainty(), -2);
            weighted += weight * logs[i];
            weights += weight;
        }
        double mean = weighted / weights;
        double chiSquare = 0;
        List<Double> off = new ArrayList<>();
        for (int i = 0; i < logs.length; i++) {
            off.add(Math.expm1(logs[i] - mean));
            chiSquare += Math.pow((logs[i] - mean) / figures.get(i).relativeUncertainty(), 2);
        }
        return new Candidate(bases, new MotorConstants(Math.exp(mean)), chiSquare, off);
    }
}
