package servowright.app.view;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.worksheet.CaseCheck;

/**
 * A worked case beside what came out, as it is shown.
 *
 * @param kind   what its answer rests on
 * @param note   what else to know about the answer; may be empty
 * @param within whether everything came out as expected
 */
public record CaseView(
        String name,
        String sheet,
        String place,
        String kind,
        String source,
        String note,
        boolean within,
        List<LineView> lines) {
    /**
     * One thing expected and what came of it.
     *
     * @param difference ours less theirs; empty for words
     */
    public record LineView(String what, String theirs, String ours, String difference, boolean within) {}

    /** A smaller share of the tolerance is no difference, only the last bits of the arithmetic. */
    private static final double WORTH_SHOWING = 1e-3;

    public CaseView {
        lines = List.copyOf(lines);
    }

    public static CaseView of(CaseCheck check) {
        return new CaseView(
                check.which().name(),
                check.which().sheet(),
                check.which().place().text(),
                check.which().kind().word(),
                check.which().source(),
                check.which().note(),
                check.within(),
                check.lines().stream().map(CaseView::line).toList());
    }

    private static LineView line(CaseCheck.Line line) {
        if (line instanceof CaseCheck.Figure figure) {
            Unit unit = figure.theirs().unit();
            if (!figure.ours().dimension().equals(unit.dimension())) {
                String ours = FigureText.full(figure.ours(), "").text();
                return new LineView(figure.what(), figure.theirs().text(), ours, "another dimension", false);
            }
            boolean noise = Math.abs(figure.difference()) < WORTH_SHOWING * figure.tolerance();
            Quantity apart = new Quantity(noise ? 0 : figure.difference(), unit.dimension());
            Unit scale = Unit.of(unit.symbol(), unit.dimension(), unit.factor());
            return new LineView(
                    figure.what(),
                    figure.theirs().text(),
                    FigureText.nine(figure.ours(), unit).text(),
                    FigureText.in(Known.exact(apart, Origin.DERIVED, ""), scale).text(),
                    figure.within());
        }
        CaseCheck.Words words = (CaseCheck.Words) line;
        return new LineView(words.what(), words.theirs(), words.ours(), "", words.within());
    }
}
