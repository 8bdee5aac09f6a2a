package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Motor;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.BackEmf;
import servowright.engine.motor.ElectricalSpeed;
import servowright.engine.motor.Waveform;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;

/** Back-EMF spin read with a meter: RMS voltage between terminals, with frequency, or with speed and known pole pairs. */
final class SpinReadings {
    private static final Phrase TRUE_RMS =
            Phrase.of("the voltmeter shows true RMS; one that averages reads up to 0.7 % low on a trapezoid");

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
            flux.assume(TRUE_RMS);
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
        Known limited = trueRms(
                instruments.limited(Resolution.of(reading, ReadingFigure.VOLTAGE, volt.get()), Reads.METER_VOLTAGE));
        Optional<Contacts> contacts = Contacts.parse(reading.contacts());
        if (contacts.isEmpty() || contacts.get().hookUp() == HookUp.ONE_AGAINST_TWO) {
            ask(id, limited, hertz.get());
            return;
        }
        flux.add(
                id + ", " + contacts.get().words(),
                limited,
                FluxReduction.basis(contacts.get().hookUp(), true),
                hertz.get());
        points.add(new SpinPoint(test, contacts.get(), limited.times(Math.sqrt(2)), hertz.get()));
    }

    /** A meter reads the harmonics too: up to what a trapezoid has of them. */
    private Known trueRms(Known volt) {
        double most = BackEmf.trueRmsExcess(Waveform.TRAPEZOID_120);
        return volt.withPart(Source.of(test.id() + " waveform"), most * volt.si() / Math.sqrt(3));
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

    private void ask(String id, Known volt, Known hertz) {
        asked = true;
        sheet.detail(Phrase.of(id + ": {E} rms at {f}").with("E", volt, "V").with("f", hertz, "Hz"));
        sheet.missing(
                MotorParameter.FLUX_LINKAGE,
                "where " + id + " was contacted, with the other terminals open",
                "state pair: A to B, or A to star");
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
