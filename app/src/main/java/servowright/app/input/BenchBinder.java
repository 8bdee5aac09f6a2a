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

    static List<Written> tests(Part file) {
        List<Written> tests = new ArrayList<>();
        Map<String, Integer> counted = new HashMap<>();
        for (Part part : file.series("tests")) {
            Optional<TestKind> kind = MachineBinder.choice(part, "test", TestKind.values(), TestKind::words);
            Optional<String> motor = part.words("motor");
            if (kind.isPresent() && motor.isPresent()) {
                String name = kind.get().words() + " " + motor.get();
                int number = counted.merge(name, 1, Integer::sum);
                tests.add(new Written(test(part, kind.get(), motor.get(), name + " " + number), part));
            }
        }
        return tests;
    }

    private static BenchTest test(Part part, TestKind kind, String motor, String id) {
        return new BenchTest(
                id,
                part.place(),
                kind,
                motor,
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
