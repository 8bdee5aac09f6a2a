package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.quantity.HookUp;

/** Finds values of one parameter that cannot both be right, and says what their ratio probably is. */
final class Contradictions {
    /** Combined standard uncertainties beyond which two values disagree. */
    private static final double COVERAGE = 2;

    /** A label without limits of its own is suspected of another basis when the ratio comes this near to a named one. */
    private static final double SUSPECT_NEAR = 0.01;

    private static final double SUSPECT_LEAST = 0.03;

    private final String motor;
    private final List<Contradiction> found = new ArrayList<>();

    Contradictions(String motor) {
        this.motor = motor;
    }

    List<Contradiction> found() {
        return List.copyOf(found);
    }

    /** Counted figures: any difference is one. */
    void polePairs(Candidate other, Candidate best) {
        if (Math.round(other.value().si()) != Math.round(best.value().si())) {
            Known ratio = Choice.ratio(other.value(), best.value());
            add(MotorParameter.POLE_PAIRS, other, best, ratio, RatioReading.ofPolePairs(ratio.si()));
        }
    }

    /** A label against the best flux linkage. */
    void flux(LabelFlux label, Candidate best, int polePairs) {
        Known ratio = Choice.ratio(label.candidate().value(), best.value());
        Optional<RatioReading> reading = RatioReading.ofConstant(ratio.si(), label, polePairs);
        if (disagree(ratio) || (reading.isPresent() && suspect(label, ratio, reading.get(), best))) {
            add(MotorParameter.FLUX_LINKAGE, label.candidate(), best, ratio, reading);
        }
    }

    private static boolean suspect(LabelFlux label, Known ratio, RatioReading reading, Candidate best) {
        double measured = best.value().relativeUncertainty();
        double off = Math.abs(ratio.si() - 1);
        double toNamed = Math.abs(ratio.si() / reading.ratio() - 1);
        return !label.limited()
                && label.constant().basisStated()
                && off > Math.max(SUSPECT_LEAST, COVERAGE * measured)
                && toNamed < SUSPECT_NEAR + measured
                && toNamed < off / 2;
    }

    /** A label against the best value of a winding figure. */
    void winding(MotorParameter what, LabelFigure label, Candidate best) {
        Known ratio = Choice.ratio(label.candidate().value(), best.value());
        if (disagree(ratio)) {
            HookUp stated = label.hookUp().orElse(HookUp.PHASE);
            add(what, label.candidate(), best, ratio, RatioReading.ofHookUp(ratio.si(), stated));
        }
    }

    /** Two tests, already found to disagree. */
    void tests(MotorParameter what, Choice.Pair pair, int polePairs) {
        Known ratio = Choice.ratio(pair.first().value(), pair.second().value());
        add(what, pair.first(), pair.second(), ratio, RatioReading.named(ratio.si(), 0.03, polePairs));
    }

    private static boolean disagree(Known ratio) {
        return ratio.si() > 0 && Math.abs(Math.log(ratio.si())) > COVERAGE * ratio.relativeUncertainty();
    }

    private void add(
            MotorParameter what, Candidate first, Candidate second, Known ratio, Optional<RatioReading> reading) {
        found.add(new Contradiction(motor, what, first, second, ratio, reading.map(RatioReading::words)));
    }
}
