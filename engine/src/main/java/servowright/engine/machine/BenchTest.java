package servowright.engine.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Place;
import servowright.engine.quantity.Accuracy;

/**
 * A bench test as declared: one measurement with its hook-up and conditions.
 *
 * @param id         unique name within the machine, made from kind, motor and position: {@code spin hub 1}
 * @param motor      name of the motor; always one that is declared, empty for an axis without one
 * @param axis       name of the axis, for a test of its angle sensor; always one that is declared
 * @param recording  name of its recording, if it has one
 * @param channels   what each channel of the recording shows: {@code CH1} to {@code A to B} or {@code current}
 * @param instrument limits of the instruments, by what they read: {@code voltage}, {@code current}, {@code speed}
 */
public record BenchTest(
        String id,
        Place place,
        TestKind kind,
        String motor,
        Optional<String> axis,
        Optional<String> recording,
        Map<String, String> channels,
        Figures<TestFigure> figures,
        List<Reading> readings,
        Map<String, Accuracy> instrument) {
    public BenchTest {
        channels = Collections.unmodifiableMap(new LinkedHashMap<>(channels));
        instrument = Collections.unmodifiableMap(new LinkedHashMap<>(instrument));
        readings = List.copyOf(readings);
    }

    /** A test of a motor. */
    public BenchTest(
            String id,
            Place place,
            TestKind kind,
            String motor,
            Optional<String> recording,
            Map<String, String> channels,
            Figures<TestFigure> figures,
            List<Reading> readings,
            Map<String, Accuracy> instrument) {
        this(id, place, kind, motor, Optional.empty(), recording, channels, figures, readings, instrument);
    }

    /** The same test with its recording under another name. */
    public BenchTest recordedAs(Optional<String> name) {
        return new BenchTest(id, place, kind, motor, axis, name, channels, figures, readings, instrument);
    }
}
