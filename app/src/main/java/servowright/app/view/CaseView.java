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
 * @param within whether everything came out as expected
 */
public record CaseView(
        String name, String sheet, String place, String kind, String source, boolean within, List<LineView> lines) {
    /**
     * One thing expected and what came of it.
     *
     * @param difference ours less theirs; empty for words
     */
    public record LineView(String what, String theirs, String ours, String difference, boolean within) {}

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
            Quantity apart = new Quantity(figure.difference(), unit.dimension());
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
