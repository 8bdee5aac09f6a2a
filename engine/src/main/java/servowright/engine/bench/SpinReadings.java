package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Meter;

/**
 * Back-EMF spin read with a meter: a voltage between terminals or behind a rectifier, with frequency, or with speed and known
 * pole pairs.
 */
final class SpinReadings {
    private final BenchTest test;
    private final Optional<Known> polePairs;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final FluxReduction flux;
    private final List<SpinPoint> points = new ArrayList<>();
    private boolean asked;

    private SpinReadings(BenchTest test, Motor motor, Optional<Known> polePairs) {
        this.test = test;
        this.polePairs = polePairs;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
        this.flux = new FluxReduction(test, motor);
    }

    /**
     * Reduces the readings.
     *
     * @param polePairs counted or stated, for readings that give a speed instead of a frequency
     */
    static Spun of(BenchTest test, Motor motor, Optional<Known> polePairs) {
        return new SpinReadings(test, motor, polePairs).reduced();
    }

    private Spun reduced() {
        for (int i = 0; i < test.readings().size(); i++) {
            add(test.readings().get(i), test.id() + " reading " + (i + 1));
        }
        if (!flux.fluxes().isEmpty()) {
            instruments.assumption(Reads.METER_VOLTAGE).ifPresent(flux::assume);
            sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
        } else if (!asked) {
            sheet.missing(
                    MotorParameter.FLUX_LINKAGE,
                    "a reading of voltage with its frequency in " + test.id(),
                    "add readings: {pair: A to B, voltage: .. V, frequency: .. Hz}");
        }
        polePairs();
        return new Spun(sheet.end(), points);
    }

    private void add(Reading reading, String id) {
        Optional<Known> volt = reading.figures().known(ReadingFigure.VOLTAGE);
        Optional<Known> hertz = hertz(reading, id);
        if (volt.isEmpty()
                || volt.get().si() <= 0
                || hertz.isEmpty()
                || hertz.get().si() <= 0) {
            sheet.remark(
                    id + " was not used: it needs a voltage above 0 and a frequency, or a speed and the pole pairs");
            return;
        }
        Known limited =
                instruments.limited(Resolution.of(reading, ReadingFigure.VOLTAGE, volt.get()), Reads.METER_VOLTAGE);
        Optional<Meter> stated = reading.figures()
                .get(ReadingFigure.VOLTAGE)
                .flatMap(d -> d.stated().meter());
        Meter meter = stated.orElse(Meter.TRUE_RMS);
        MeterVoltage.of(test.id(), id, reading.contacts(), limited, meter, flux.sheet())
                .fold(
                        a -> took(id, a.value(), hertz.get(), MeterVoltage.assumption(meter, stated.isPresent())),
                        missing -> ask(id, limited, meter, hertz.get(), missing));
    }

    private boolean took(String id, MeterVoltage read, Known hertz, Phrase assumption) {
        String where = read.contacts().map(c -> ", " + c.words()).orElse(", behind a rectifier");
        flux.add(id + where, read.volt(), read.basis(), hertz);
        flux.assume(assumption);
        read.contacts().ifPresent(c -> points.add(new SpinPoint(test, c, read.peak(), hertz)));
        return true;
    }

    private Optional<Known> hertz(Reading reading, String id) {
        Optional<Known> stated = reading.figures().known(ReadingFigure.FREQUENCY);
        if (stated.isPresent()) {
            instruments.assumption(Reads.FREQUENCY).ifPresent(flux::assume);
            Known read = Resolution.of(reading, ReadingFigure.FREQUENCY, stated.get());
            return Optional.of(instruments.limited(read, Reads.FREQUENCY));
        }
        Optional<Known> speed = reading.figures()
                .known(ReadingFigure.SPEED)
                .or(() -> test.figures().get(TestFigure.SPEED).map(Declared::known));
        if (speed.isEmpty() || polePairs.isEmpty() || speed.get().si() == 0) {
            return Optional.empty();
        }
        instruments.assumption(Reads.SPEED).ifPresent(flux::assume);
        Known limited = instruments.limited(speed.get(), Reads.SPEED);
        return Optional.of(flux.sheet()
                .line(
                        "electrical frequency of " + id,
                        "{f} = {p} · {ω} / 2π",
                        "Hz",
                        Dimension.FREQUENCY,
                        "definition of the electrical angle",
                        v -> ElectricalSpeed.hertz(v[1], (int) Math.round(v[0])),
                        Term.of("p", polePairs.get()),
                        Term.of("ω", limited, "rpm")));
    }

    private boolean ask(String id, Known volt, Meter meter, Known hertz, Outcome.Missing<MeterVoltage> missing) {
        asked = true;
        sheet.detail(Phrase.of(id + ": {E} " + meter.words() + " at {f}")
                .with("E", volt, "V")
                .with("f", hertz, "Hz"));
        missing.needs().forEach(n -> sheet.missing(MotorParameter.FLUX_LINKAGE, n.what(), n.settle()));
        return false;
    }

    private void polePairs() {
        for (Reading reading : test.readings()) {
            Optional<Known> hertz = reading.figures().known(ReadingFigure.FREQUENCY);
            Optional<Known> speed = reading.figures()
                    .known(ReadingFigure.SPEED)
                    .or(() -> test.figures().get(TestFigure.SPEED).map(Declared::known));
            if (hertz.isPresent() && hertz.get().si() > 0 && speed.isPresent()) {
                Known limited = instruments.limited(hertz.get(), Reads.FREQUENCY);
                SpinPolePairs.add(sheet, test, limited, speed, instruments);
                return;
            }
        }
    }
}
