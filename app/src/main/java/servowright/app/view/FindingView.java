package servowright.app.view;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding;
import servowright.engine.known.Known;
import servowright.engine.quantity.Unit;

/**
 * A finding as it is shown.
 *
 * @param key     what {@code explain} takes: {@code lift/speed-reach}
 * @param area    what {@code --only} takes
 * @param needs   what would settle it
 * @param margin  the judged figure against its limit, if there is one
 * @param working how the figures came about
 */
public record FindingView(
        String key,
        String id,
        String subject,
        String area,
        Verdict verdict,
        Sentence statement,
        Sentence reason,
        Sentence remedy,
        List<NeedView> needs,
        Optional<MarginView> margin,
        List<WorkingText> working,
        List<Sentence> assumptions,
        String source) {

    /**
     * A judged figure against its limit, both in one unit.
     *
     * @param atLeast whether the value must be at least the limit; otherwise at most
     */
    public record MarginView(FigureText value, FigureText limit, boolean atLeast) {
        /** {@code at least 3200 rpm}. */
        public String limitText() {
            return (atLeast ? "at least " : "at most ") + limit.text();
        }
    }

    public FindingView {
        needs = List.copyOf(needs);
        working = LateList.copyOf(working);
        assumptions = List.copyOf(assumptions);
    }

    /** What would settle it, as far as the remedy does not say so already. */
    public List<NeedView> openNeeds() {
        return needs.stream()
                .filter(n -> n.settle().isEmpty() || !n.settle().equals(remedy.text()))
                .toList();
    }

    static FindingView of(Finding finding) {
        return new FindingView(
                finding.key(),
                finding.id(),
                finding.subject(),
                finding.area().words(),
                finding.verdict(),
                Sentence.of(finding.statement()),
                Sentence.of(finding.reason()),
                Sentence.of(finding.remedy()),
                finding.needs().stream().map(NeedView::of).toList(),
                finding.margin().map(FindingView::margin),
                WorkingText.of(finding.working()),
                finding.assumptions().stream().map(Sentence::of).toList(),
                finding.source());
    }

    private static MarginView margin(Finding.Margin margin) {
        Known larger = Math.abs(margin.value().si()) > Math.abs(margin.limit().si()) ? margin.value() : margin.limit();
        Unit unit = UsualUnit.of(larger.si(), larger.dimension(), margin.unit());
        return new MarginView(
                FigureText.in(margin.value(), unit),
                FigureText.in(margin.limit(), unit),
                margin.sense() == Finding.Sense.AT_LEAST);
    }
}
