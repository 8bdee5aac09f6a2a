package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.encoder.Alignment;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;

/**
 * Stops at standing fields, read from both sides: commutation offset, direction, pole pairs, friction. The first reading is
 * where the rotor started; from the second on the step of the field tells from which side a stop was reached.
 */
final class AlignmentTest {
    private static final int FEWEST = 5;

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Working.Sheet working = Working.begin();

    private AlignmentTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
    }

    static Sensed of(BenchTest test) {
        return new AlignmentTest(test).reduced();
    }

    private Sensed reduced() {
        List<Alignment.Stop> stops = stops();
        if (stops.size() < FEWEST - 1) {
            return Sensed.without(sheet.refused(
                    AxisParameter.COMMUTATION_OFFSET,
                    "stops in " + test.id() + ": " + stops.size() + " after the first",
                    "add readings: {field_angle: 90 deg, angle: 51.2 deg}, over a whole turn and back"));
        }
        Alignment.Outcome outcome = Alignment.of(stops);
        if (outcome instanceof Alignment.Outcome.Found found) {
            tell(found.alignment(), stops.size());
        } else if (outcome instanceof Alignment.Outcome.NotFollowed not) {
            sheet.missing(
                    AxisParameter.COMMUTATION_OFFSET,
                    "a rotor that follows in " + test.id() + ": electrical over mechanical travel is "
                            + near(not.ratio()) + ", no whole number",
                    "more current; then look for a slipping or axial magnet and for wrong counts");
        } else {
            sheet.missing(
                    AxisParameter.COMMUTATION_OFFSET,
                    "stops from both sides in " + test.id() + ": friction hides in the offset",
                    "go on beyond the last angle and come back over the same ones");
        }
        return Sensed.of(sheet.end(), new AngleEvidence.Aligned(test.id(), outcome));
    }

    private static String near(double ratio) {
        return Double.isFinite(ratio) ? String.valueOf(Math.rint(100 * ratio) / 100) : "without bound";
    }

    private List<Alignment.Stop> stops() {
        List<Alignment.Stop> stops = new ArrayList<>();
        Optional<Double> before = Optional.empty();
        for (Reading reading : test.readings()) {
            Optional<Double> field =
                    reading.figures().known(ReadingFigure.FIELD_ANGLE).map(Known::si);
            Optional<Double> angle =
                    reading.figures().known(ReadingFigure.ANGLE).map(Known::si);
            if (field.isEmpty() || angle.isEmpty()) {
                sheet.remark("a reading without field_angle and angle was not used");
            } else {
                if (before.isPresent() && !before.equals(field)) {
                    stops.add(new Alignment.Stop(field.get(), angle.get(), field.get() > before.get()));
                }
                before = field;
            }
        }
        return stops;
    }

    private void tell(Alignment found, int stops) {
        int used = stops - found.trapped().size();
        double scatter = found.spreadElectricalRad() / Math.sqrt(Math.max(1, used - 2));
        Known lag = AngleFit.angle(test, Math.abs(found.frictionElectricalRad()), scatter, " scatter of the lag");
        Known offset =
                AngleFit.uneven(test, AngleFit.angle(test, found.offsetElectricalRad(), scatter, " scatter"), lag);
        working.note("friction, half of the difference of the sides", "{δ}", "deg", "torque balance at a stop", lag);
        working.note(
                "commutation offset, mean of both sides",
                "{θ0}",
                "deg",
                "circular mean of s p θ_read − θ_field, s the direction of the count",
                offset);
        List<Phrase> assumptions = List.of(AngleFit.UNEVEN);
        sheet.value(AxisParameter.COMMUTATION_OFFSET, new Candidate(offset, test.id(), working.end(), assumptions));
        sheet.value(AxisParameter.FRICTION_LAG, new Candidate(lag, test.id(), working.end()));
        sheet.value(MotorParameter.POLE_PAIRS, pairs(found.polePairs()));
        if (found.reversed()) {
            sheet.remark("the sensor counts against the field: set its direction, or swap two phases");
        }
        for (int i : found.trapped()) {
            sheet.remark(
                    Phrase.of("stop {n} lies half an electrical turn off, where a rotor rests unstably; not counted")
                            .with("n", i + 2));
        }
    }

    private Candidate pairs(int polePairs) {
        Working.Sheet own = Working.begin();
        Known pairs = Known.number(polePairs, Origin.MEASURED, test.place().text());
        own.note("pole pairs", "{p}", "", "electrical over mechanical travel, whole within 2 %", pairs);
        return new Candidate(pairs, test.id(), own.end());
    }
}
