package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BenchTest;

/** The result of one bench test while it is written. */
final class ResultSheet {
    private final BenchTest test;
    private final Map<Sought, Outcome<Candidate>> values = new LinkedHashMap<>();
    private final List<Phrase> details = new ArrayList<>();
    private final List<Phrase> remarks = new ArrayList<>();
    private final List<Curve> curves = new ArrayList<>();

    ResultSheet(BenchTest test) {
        this.test = test;
    }

    void value(Sought what, Candidate candidate) {
        values.put(what, new Outcome.Answer<>(candidate, candidate.working(), candidate.assumptions()));
    }

    void missing(Sought what, Missing<?> why) {
        values.put(what, why.forAnother());
    }

    void missing(Sought what, String need, String settle) {
        values.put(what, Outcome.missing(need, settle));
    }

    void detail(Phrase phrase) {
        details.add(phrase);
    }

    void remark(Phrase phrase) {
        remarks.add(phrase);
    }

    void remark(String words) {
        remarks.add(Phrase.of(words));
    }

    void remarks(List<Phrase> phrases) {
        remarks.addAll(phrases);
    }

    void curves(List<Curve> more) {
        curves.addAll(more);
    }

    /** A test that gives nothing, for one reason. */
    TestResult refused(Sought what, String need, String settle) {
        missing(what, need, settle);
        return end();
    }

    Optional<Outcome<Candidate>> found(Sought what) {
        return Optional.ofNullable(values.get(what));
    }

    TestResult end() {
        return new TestResult(test, values, details, remarks, curves);
    }
}
