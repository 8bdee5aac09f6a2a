package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding.Margin;
import servowright.engine.findings.Finding.Sense;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;

/** A finding while a rule writes it. */
final class Draft {
    private final Rule rule;
    private final String subject;
    private Verdict verdict = Verdict.HOLDS;
    private Phrase statement = Phrase.of("");
    private Phrase reason = Phrase.of("");
    private Phrase remedy = Phrase.of("");
    private List<Need> needs = List.of();
    private Optional<Margin> margin = Optional.empty();
    private Working working = Working.NONE;
    private List<Phrase> assumptions = List.of();

    private Draft(Rule rule, String subject) {
        this.rule = rule;
        this.subject = subject;
    }

    static Draft of(Rule rule, String subject) {
        return new Draft(rule, subject);
    }

    /** A question without an answer: what is missing, and what would settle it. */
    static Finding notShown(Rule rule, String subject, Missing<?> missing) {
        String what = missing.needs().stream().map(Need::what).distinct().collect(Collectors.joining(", "));
        return of(rule, subject)
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of("not known: {what}").with("what", what))
                .remedy(Phrase.of("{settle}")
                        .with("settle", missing.needs().get(0).settle()))
                .needs(missing.needs())
                .done();
    }

    Draft verdict(Verdict is) {
        this.verdict = is;
        return this;
    }

    Draft says(Phrase words) {
        this.statement = words;
        return this;
    }

    Draft because(Phrase words) {
        this.reason = words;
        return this;
    }

    Draft remedy(Phrase words) {
        this.remedy = words;
        return this;
    }

    Draft needs(List<Need> what) {
        this.needs = what;
        return this;
    }

    /** What would narrow the interval when it straddles its limit. */
    Draft wouldSettle(String what, String how) {
        return verdict == Verdict.NOT_SHOWN ? needs(List.of(new Need(what, how))) : this;
    }

    Draft atMost(Known value, Known limit, String unit) {
        this.margin = Optional.of(new Margin(value, limit, Sense.AT_MOST, unit));
        return this;
    }

    Draft atLeast(Known value, Known limit, String unit) {
        this.margin = Optional.of(new Margin(value, limit, Sense.AT_LEAST, unit));
        return this;
    }

    /** Takes over how an answer came about and what it assumes. */
    Draft from(Answer<?> answer) {
        return worked(answer.working(), answer.assumptions());
    }

    Draft worked(Working how, List<Phrase> assuming) {
        this.working = how;
        this.assumptions = assuming;
        return this;
    }

    /** Two lists of assumptions as one, each said once. */
    static List<Phrase> both(List<Phrase> first, List<Phrase> second) {
        return Stream.concat(first.stream(), second.stream()).distinct().toList();
    }

    /** Advice stands only where something is not as it should be. */
    Finding done() {
        Phrase advice = verdict == Verdict.HOLDS ? Phrase.of("") : remedy;
        return new Finding(
                rule.id(),
                subject,
                rule.area(),
                verdict,
                statement,
                reason,
                advice,
                needs,
                margin,
                working,
                assumptions,
                rule.source());
    }
}
