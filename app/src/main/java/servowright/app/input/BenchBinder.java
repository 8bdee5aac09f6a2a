package servowright.app.input;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.input.form.Value;
import servowright.app.input.form.Value.Part;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.BusCapture;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Accuracy;

/** Makes the bench tests from the values that were found good. */
final class BenchBinder {
    private BenchBinder() {}

    /**
     * One test with the keys it was written with.
     *
     * @param part holds what is said about its recording
     */
    record Written(BenchTest test, Part part) {}

    /**
     * The tests of a file.
     *
     * @param axes the axes of the machine: a test of an angle sensor names its axis, which names its motor
     */
    static List<Written> tests(Part file, Map<String, Part> axes) {
        List<Written> tests = new ArrayList<>();
        Map<String, Integer> counted = new HashMap<>();
        for (Part part : file.series("tests")) {
            Optional<TestKind> kind = MachineBinder.choice(part, "test", TestKind.values(), TestKind::words);
            Optional<String> subject = part.words(kind.map(BenchBinder::subject).orElse("motor"));
            if (kind.isPresent() && subject.isPresent()) {
                String name = kind.get().words() + " " + subject.get();
                int number = counted.merge(name, 1, Integer::sum);
                tests.add(new Written(test(part, kind.get(), axes, name + " " + number), part));
            }
        }
        return tests;
    }

    /** The key under which a test of that kind names what it looks at. */
    static String subject(TestKind kind) {
        return kind.ofAxis() ? "axis" : "motor";
    }

    /** Captures of the bus. */
    static List<BusCapture> captures(Part file) {
        return file.series("captures").stream()
                .flatMap(part -> part.words("recording").stream()
                        .map(r -> new BusCapture(
                                part.place(), r, part.words("interface"), BusBinder.signals(part.part("signals")))))
                .toList();
    }

    private static BenchTest test(Part part, TestKind kind, Map<String, Part> axes, String id) {
        Optional<String> axis = part.words("axis");
        Optional<String> motor =
                kind.ofAxis() ? axis.map(axes::get).flatMap(a -> a.words("motor")) : part.words("motor");
        return new BenchTest(
                id,
                part.place(),
                kind,
                motor.orElse(""),
                axis,
                part.words("recording"),
                part.texts("channels"),
                part.figures(TestFigure.class),
                part.series("readings").stream().map(BenchBinder::reading).toList(),
                instrument(part.part("instrument")));
    }

    private static Reading reading(Part part) {
        return new Reading(part.place(), part.words("pair").orElse(""), part.figures(ReadingFigure.class));
    }

    private static Map<String, Accuracy> instrument(Part part) {
        Map<String, Accuracy> limits = new LinkedHashMap<>();
        part.values().forEach((shown, v) -> {
            if (v instanceof Value.Limits l) {
                limits.put(shown, l.accuracy());
            }
        });
        return limits;
    }
}
