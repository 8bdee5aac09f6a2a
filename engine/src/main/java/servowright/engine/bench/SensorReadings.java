package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.MeasuredAxisField;
import servowright.engine.encoder.OffsetAtSpeeds;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Tests of an angle sensor that are a few readings: offsets at speeds, magnitudes at shims, offsets after seatings. */
final class SensorReadings {
    private static final double OFFSET_HALF_WIDTH_RAD = Math.toRadians(2);
    private static final double MAGNITUDE_SHARE = 0.005;

    /** How well a parabola in the logarithm follows a disc. */
    private static final double MODEL_SHARE = 0.03;

    private static final Dimension PER_LENGTH = Dimension.NUMBER.over(Dimension.LENGTH);
    private static final Dimension PER_AREA = Dimension.NUMBER.over(Dimension.AREA);

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Working.Sheet working = Working.begin();
    private final List<Phrase> assumptions = new ArrayList<>();

    SensorReadings(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
    }

    /** Two figures of one reading. */
    private record Pair(Known first, Known second) {}

    private List<Pair> pairs(ReadingFigure first, ReadingFigure second) {
        List<Pair> pairs = new ArrayList<>();
        for (Reading reading : test.readings()) {
            Optional<Known> one = reading.figures().known(first);
            Optional<Known> other = reading.figures().known(second);
            if (one.isPresent() && other.isPresent()) {
                pairs.add(new Pair(one.get(), other.get()));
            }
        }
        return pairs;
    }

    /** The best offset at several speeds: the true one and the delay. */
    Sensed offsets(Optional<Known> polePairs) {
        List<Pair> pairs = pairs(ReadingFigure.SPEED, ReadingFigure.OFFSET).stream()
                .sorted(Comparator.comparingDouble(p -> p.first().si()))
                .toList();
        long speedsGiven =
                pairs.stream().mapToDouble(p -> p.first().si()).distinct().count();
        if (polePairs.isEmpty()) {
            return Sensed.without(sheet.refused(
                    AxisParameter.COMMUTATION_DELAY, "pole pairs of " + test.motor(), "count the magnets"));
        }
        if (speedsGiven < 2) {
            return Sensed.without(sheet.refused(
                    AxisParameter.COMMUTATION_DELAY,
                    "offsets at two speeds in " + test.id(),
                    "add readings: {speed: -300 rpm, offset: 31 deg}"));
        }
        line(pairs, (int) Math.round(polePairs.get().si()));
        return Sensed.without(sheet.end());
    }

    /** The straight line through offsets against speeds. */
    private void line(List<Pair> pairs, int p) {
        double[] speeds = pairs.stream().mapToDouble(r -> r.first().si()).toArray();
        Term[] terms = IntStream.range(0, pairs.size())
                .mapToObj(i -> Term.of("o" + (i + 1), offset(pairs.get(i).second(), i), "deg"))
                .toArray(Term[]::new);
        OffsetAtSpeeds middle =
                of(speeds, Arrays.stream(terms).mapToDouble(t -> t.value().si()).toArray(), p);
        Known offset = working.line(
                "offset at standstill",
                "{θ0} = intercept of " + names(terms) + " over the speed",
                "deg",
                Dimension.ANGLE,
                "θ0(ω) = θ0 + p ω τ, straight line by least squares",
                v -> middle.offsetElectricalRad()
                        + Angles.wrapped(of(speeds, v, p).offsetElectricalRad() - middle.offsetElectricalRad()),
                terms);
        Known delay = working.line(
                "delay from angle to voltage",
                "{τ} = slope of " + names(terms) + " over the speed / " + p,
                "us",
                Dimension.TIME,
                "θ0(ω) = θ0 + p ω τ, straight line by least squares",
                v -> of(speeds, v, p).delaySecond(),
                terms);
        sheet.value(AxisParameter.COMMUTATION_OFFSET, new Candidate(offset, test.id(), working.end(), assumptions));
        sheet.value(AxisParameter.COMMUTATION_DELAY, new Candidate(delay, test.id(), working.end(), assumptions));
        sheet.detail(Phrase.of("largest departure from the line {r}")
                .with("r", new Quantity(middle.residualElectricalRad(), Dimension.ANGLE), "deg"));
    }

    private static OffsetAtSpeeds of(double[] speeds, double[] offsets, int p) {
        return OffsetAtSpeeds.of(speeds, offsets, p).orElseThrow();
    }

    private static String names(Term... terms) {
        return String.join(
                ", ", Arrays.stream(terms).map(t -> "{" + t.symbol() + "}").toList());
    }

    private Known offset(Known stated, int i) {
        if (stated.standardUncertainty() > 0) {
            return stated;
        }
        assume(Phrase.of("the best offset found within {limit} (common practice, no source)")
                .with("limit", new Quantity(OFFSET_HALF_WIDTH_RAD, Dimension.ANGLE), "deg"));
        return stated.withPart(Source.of(test.id() + " offset " + (i + 1)), OFFSET_HALF_WIDTH_RAD / Math.sqrt(3));
    }

    /** Magnitudes at shims: slope and bend of the field, whatever the magnet is. */
    Sensed shims() {
        List<Pair> field = pairs(ReadingFigure.SHIM, ReadingFigure.FIELD);
        List<Pair> pairs = field.isEmpty() ? pairs(ReadingFigure.SHIM, ReadingFigure.MAGNITUDE) : field;
        long thicknesses =
                pairs.stream().mapToDouble(p -> p.first().si()).distinct().count();
        if (thicknesses < 3) {
            return Sensed.without(sheet.refused(
                    AxisParameter.FIELD_BEND,
                    "the field at three shims in " + test.id() + ": it has " + thicknesses,
                    "add readings: {shim: 0.5 mm, field: 62 mT}, at three thicknesses or more"));
        }
        double[] gaps = pairs.stream().mapToDouble(p -> p.first().si()).toArray();
        assume(Phrase.of("magnitudes read within {share} of each other (common practice, no source)")
                .with("share", Quantity.number(MAGNITUDE_SHARE), "%"));
        Term[] terms = IntStream.range(0, pairs.size())
                .mapToObj(i -> Term.of("B" + (i + 1), magnitude(pairs.get(i).second(), i)))
                .toArray(Term[]::new);
        Known slope = shim(
                "change of the field with the gap",
                "{β} = B'/B from ",
                "1/mm",
                PER_LENGTH,
                gaps,
                terms,
                MeasuredAxisField::relativeSlopePerMetre);
        Known bend = shim(
                "bend of the field with the gap",
                "{κ} = −B''/(8 B) from ",
                "1/mm2",
                PER_AREA,
                gaps,
                terms,
                MeasuredAxisField::kappaPerSquareMetre);
        Known bounded = bend.withPart(Source.of(test.id() + " parabola"), MODEL_SHARE * Math.abs(bend.si()));
        sheet.value(AxisParameter.FIELD_SLOPE, new Candidate(slope, test.id(), working.end(), assumptions));
        sheet.value(AxisParameter.FIELD_BEND, new Candidate(bounded, test.id(), working.end(), assumptions));
        return Sensed.without(sheet.end());
    }

    private Known shim(
            String label,
            String formula,
            String unit,
            Dimension dimension,
            double[] gaps,
            Term[] terms,
            ToDoubleFunction<MeasuredAxisField> figure) {
        return working.line(
                label,
                formula + names(terms),
                unit,
                dimension,
                "parabola through ln B at its middle",
                v -> MeasuredAxisField.of(gaps, v).map(figure::applyAsDouble).orElse(Double.NaN),
                terms);
    }

    private Known magnitude(Known stated, int i) {
        return stated.withPart(Source.of(test.id() + " reading " + (i + 1)), MAGNITUDE_SHARE * stated.si());
    }

    /** Offsets found after each seating. */
    Sensed seatings() {
        List<Double> offsets = test.readings().stream()
                .map(r -> r.figures().known(ReadingFigure.OFFSET))
                .flatMap(Optional::stream)
                .map(Known::si)
                .toList();
        if (offsets.size() < 2) {
            return Sensed.without(sheet.refused(
                    AxisParameter.RESEATING_SPREAD,
                    "offsets of two seatings in " + test.id(),
                    "add readings: {offset: 36.4 deg}, one for each seating"));
        }
        double spread = OffsetAtSpeeds.reseatingSpreadRad(
                offsets.stream().mapToDouble(Double::doubleValue).toArray());
        Known known = Known.of(
                new Quantity(spread, Dimension.ANGLE),
                spread / Math.sqrt(2.0 * (offsets.size() - 1)),
                Source.of(test.id() + " few seatings"),
                Origin.MEASURED,
                test.place().text());
        working.note(
                "largest distance of an offset from the mean",
                "{Δ}",
                "deg",
                "circular mean; uncertainty of a spread from few seatings, 1/√(2(n−1))",
                known);
        sheet.value(AxisParameter.RESEATING_SPREAD, new Candidate(known, test.id(), working.end()));
        return Sensed.of(sheet.end(), new AngleEvidence.Reseated(test.id(), offsets));
    }

    private void assume(Phrase phrase) {
        if (!assumptions.contains(phrase)) {
            assumptions.add(phrase);
        }
    }
}
