package servowright.app.view;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.RecorderParameter;
import servowright.engine.bench.ResponseParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.bench.ThermistorParameter;
import servowright.engine.known.Origin;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Reading;

/**
 * What one bench test gave.
 *
 * @param motor      name of the motor, or of the axis for a test of its angle sensor
 * @param place      where it is declared
 * @param path       the keys leading there
 * @param brief      what it measured beside the parameters of a motor, in a line: {@code gain 0.998, delay 11 ms}; may be empty
 * @param conditions hook-up, conditions, readings and instruments as declared
 */
public record TestView(
        String id,
        String kind,
        String motor,
        String place,
        String path,
        String brief,
        List<PartView.Row> conditions,
        List<ValueView> values,
        List<Sentence> details,
        List<Sentence> remarks,
        List<Plot> plots) {
    private static final Set<ResponseParameter> OF_ONE_SINE =
            EnumSet.of(ResponseParameter.RATIO, ResponseParameter.PHASE);

    /**
     * A parameter from this test.
     *
     * @param value the figure with its working, if the test gives one
     * @param needs why it does not; empty when it does
     */
    public record ValueView(String words, Optional<MotorView.CandidateView> value, List<NeedView> needs) {}

    public TestView {
        conditions = List.copyOf(conditions);
        values = List.copyOf(values);
        details = List.copyOf(details);
        remarks = List.copyOf(remarks);
        plots = List.copyOf(plots);
    }

    static TestView of(TestResult result) {
        BenchTest test = result.test();
        List<ValueView> values = new ArrayList<>();
        result.values()
                .forEach((what, outcome) -> values.add(new ValueView(
                        what.words(),
                        outcome.found().map(c -> MotorView.candidate(c, what.unit())),
                        outcome.fold(
                                a -> List.of(),
                                m -> m.needs().stream().map(NeedView::of).toList()))));
        return new TestView(
                test.id(),
                test.kind().words(),
                test.axis().orElse(test.motor()),
                test.place().text(),
                test.place().path(),
                brief(result),
                conditions(test),
                values,
                result.details().stream().map(Sentence::of).toList(),
                result.remarks().stream().map(Sentence::of).toList(),
                Plot.of(test.id(), result.curves()));
    }

    /** Loops, clocks and thermistors; a single sine says little without the others. */
    private static String brief(TestResult result) {
        List<String> said = new ArrayList<>();
        result.values().forEach((what, outcome) -> {
            boolean beside = what instanceof ThermistorParameter
                    || what instanceof RecorderParameter
                    || (what instanceof ResponseParameter response && !OF_ONE_SINE.contains(response));
            outcome.found()
                    .map(Candidate::value)
                    .filter(k -> beside && k.origin() == Origin.MEASURED)
                    .ifPresent(k -> said.add(what.words().replaceFirst(" of the .*", "") + " "
                            + FigureText.of(k, what.unit()).text()));
        });
        return String.join(", ", said);
    }

    private static List<PartView.Row> conditions(BenchTest test) {
        List<PartView.Row> rows = new ArrayList<>();
        test.axis().ifPresent(a -> rows.add(new PartView.Row("axis", a)));
        test.recording().ifPresent(r -> rows.add(new PartView.Row("recording", r)));
        test.channels().forEach((channel, what) -> rows.add(new PartView.Row(channel, what)));
        rows.addAll(MachineParts.rows(test.figures()));
        for (Reading reading : test.readings()) {
            List<String> figures = MachineParts.rows(reading.figures()).stream()
                    .map(r -> r.label() + " " + r.text())
                    .toList();
            String label = reading.contacts().isEmpty() ? "reading" : reading.contacts();
            rows.add(new PartView.Row(label, String.join(", ", figures), reading.place()));
        }
        test.instrument()
                .forEach((what, accuracy) ->
                        rows.add(new PartView.Row(what + " instrument", AccuracyText.of(accuracy))));
        return rows;
    }
}
