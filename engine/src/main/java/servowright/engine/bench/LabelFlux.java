package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.motor.ConstantsClosure;
import servowright.engine.motor.StatedConstant;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.VoltageBasis;

/**
 * A declared motor constant as a candidate for the flux linkage.
 *
 * @param constant  what was declared, with the bases it may have
 * @param basis     the basis it was read on
 * @param limited   whether its limits are its own
 */
record LabelFlux(Candidate candidate, StatedConstant constant, ConstantBasis basis, boolean limited) {
    private static final double SMALLEST_UNCERTAINTY = 1e-4;

    /** A declared figure and the constant it states. */
    private record Entry(MotorFigure figure, Declared declared, LabelTolerance limits, StatedConstant constant) {}

    /**
     * Every declared constant as a flux linkage. A figure without basis is read on the one that closes best with the
     * others and with what was measured; when nothing tells, on the commonest, with the next as its uncertainty.
     *
     * @param polePairs the best known
     * @param measured  flux linkage from the bench, if any
     */
    static List<LabelFlux> of(Motor motor, Known polePairs, Optional<Candidate> measured) {
        int p = (int) Math.round(polePairs.si());
        List<Entry> entries = entries(motor, p);
        int room = ConstantsClosure.MOST_FIGURES - (measured.isPresent() ? 1 : 0);
        List<Entry> used = entries.subList(0, Math.min(room, entries.size()));
        if (used.isEmpty()) {
            return List.of();
        }
        List<StatedConstant> constants = new ArrayList<>();
        used.forEach(e -> constants.add(e.constant()));
        measured.ifPresent(m -> constants.add(StatedConstant.fluxLinkage(
                m.value().si(),
                p,
                VoltageBasis.PHASE_PEAK,
                Math.max(SMALLEST_UNCERTAINTY, m.value().relativeUncertainty()))));
        ConstantsClosure closure = ConstantsClosure.of(constants);
        List<LabelFlux> found = new ArrayList<>();
        for (int i = 0; i < used.size(); i++) {
            found.add(flux(used.get(i), closure, i, polePairs));
        }
        return found;
    }

    private static LabelFlux flux(Entry entry, ConstantsClosure closure, int index, Known polePairs) {
        ConstantBasis basis = closure.best().bases().get(index);
        List<Phrase> assumptions = new ArrayList<>(entry.limits().assumptions());
        Working.Sheet sheet = Working.begin();
        String name = entry.constant().kind().words();
        Known constant = LabelFigure.stated(sheet, name, "", entry.limits().known());
        Known flux = line(sheet, entry, basis, constant, polePairs);
        Origin origin = entry.declared().known().origin();
        if (!entry.constant().basisStated()) {
            assumptions.add(
                    Phrase.of("basis of the " + name + " not stated; read as " + basis.words() + reason(closure)));
            flux = flux.withPart(
                    Source.of(entry.declared().place().text() + " "
                            + entry.declared().place().path() + " basis"),
                    distanceToNext(closure, index) * flux.si() / Math.sqrt(3));
            origin = Origin.ASSUMED;
        }
        Known value = flux.as(origin, entry.declared().place().text());
        return new LabelFlux(
                LabelFigure.candidate(value, entry.declared(), sheet, assumptions),
                entry.constant(),
                basis,
                entry.limits().stated());
    }

    private static Known line(Working.Sheet sheet, Entry entry, ConstantBasis basis, Known constant, Known polePairs) {
        StatedConstant.Kind kind = entry.constant().kind();
        String k = String.format(Locale.ROOT, "%.4f", basis.perFlux());
        String formula = switch (kind) {
            case SPEED_CONSTANT -> "{λ} = 1 / (" + k + " · {K} · {p})";
            case EMF_CONSTANT, TORQUE_CONSTANT -> "{λ} = {K} / (" + k + " · {p})";
            case FLUX_LINKAGE -> "{λ} = {K} / " + k;
        };
        int p = (int) Math.round(polePairs.si());
        return sheet.line(
                "flux linkage from the " + kind.words() + ", " + basis.words(),
                formula,
                "mWb",
                Dimension.FLUX_LINKAGE,
                "sinusoidal back-EMF; factors of the bases from the power balance",
                v -> new StatedConstant(kind, v[0], p, List.of(basis), 1)
                        .on(basis)
                        .fluxLinkageWeberPeak(p),
                Term.of("K", constant),
                Term.of("p", polePairs));
    }

    private static String reason(ConstantsClosure closure) {
        return closure.tied().size() > 1
                ? ", the commonest (common practice, no source)"
                : ", on which it closes best with the other figures";
    }

    /** How far, relative, the flux linkage moves when the next basis that closes equally well is the right one. */
    private static double distanceToNext(ConstantsClosure closure, int index) {
        ConstantBasis chosen = closure.best().bases().get(index);
        return closure.tied().stream()
                .map(c -> c.bases().get(index))
                .filter(b -> !b.equals(chosen))
                .mapToDouble(b -> Math.abs(chosen.perFlux() / b.perFlux() - 1))
                .findFirst()
                .orElse(0);
    }

    private static List<Entry> entries(Motor motor, int polePairs) {
        List<Entry> found = new ArrayList<>();
        for (MotorFigure figure : List.of(
                MotorFigure.FLUX_LINKAGE,
                MotorFigure.EMF_CONSTANT,
                MotorFigure.SPEED_CONSTANT,
                MotorFigure.TORQUE_CONSTANT)) {
            for (Declared declared : motor.figures().all(figure)) {
                if (declared.si() > 0 && perMotorAmp(declared)) {
                    LabelTolerance limits = LabelTolerance.of(figure, declared);
                    double relative =
                            Math.max(SMALLEST_UNCERTAINTY, limits.known().relativeUncertainty());
                    found.add(new Entry(figure, declared, limits, constant(figure, declared, polePairs, relative)));
                }
            }
        }
        return found;
    }

    /** A constant per supply ampere is none: supply current depends on speed as well as on torque. */
    private static boolean perMotorAmp(Declared declared) {
        return declared.stated()
                .currentBasis()
                .filter(b -> b == CurrentBasis.SUPPLY)
                .isEmpty();
    }

    private static StatedConstant constant(MotorFigure figure, Declared declared, int polePairs, double relative) {
        double value = declared.si();
        Optional<VoltageBasis> volts = declared.stated().voltageBasis();
        Optional<CurrentBasis> amps = declared.stated().currentBasis();
        return switch (figure) {
            case SPEED_CONSTANT ->
                volts.map(b -> StatedConstant.speedConstant(value, b, relative))
                        .orElseGet(() -> StatedConstant.speedConstant(value, relative));
            case EMF_CONSTANT ->
                volts.map(b -> StatedConstant.emfConstant(value, b, relative))
                        .orElseGet(() -> StatedConstant.emfConstant(value, relative));
            case TORQUE_CONSTANT ->
                amps.map(b -> StatedConstant.torqueConstant(value, b, relative))
                        .orElseGet(() -> StatedConstant.torqueConstant(value, relative));
            // The key itself says per phase, peak.
            default -> StatedConstant.fluxLinkage(value, polePairs, volts.orElse(VoltageBasis.PHASE_PEAK), relative);
        };
    }
}
