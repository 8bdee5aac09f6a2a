package servowright.app.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;

/**
 * A worked worksheet as it is shown.
 *
 * @param name    of the worksheet
 * @param title   a few words
 * @param results in the order of the declaration; empty when something is missing
 * @param working how they came about
 * @param remarks what the reader should know
 * @param assumed what was taken without being given
 * @param needs   what is missing; empty when there are results
 * @param sources of the formulas
 */
public record SheetView(
        String name,
        String title,
        List<ResultView> results,
        List<WorkingText> working,
        List<Sentence> remarks,
        List<Sentence> assumed,
        List<NeedView> needs,
        List<String> sources) {
    /**
     * A result: a figure or a word.
     *
     * @param meaning what it is, with its basis
     * @param figure  empty for a word
     */
    public record ResultView(String name, String meaning, Optional<FigureText> figure, String text) {}

    /** What a worksheet gave. */
    public static SheetView of(Declaration declaration, Outcome<Results> outcome) {
        return outcome.fold(
                answer -> new SheetView(
                        declaration.name(),
                        declaration.title(),
                        results(declaration, answer.value()),
                        WorkingText.of(answer.working(), true),
                        sentences(answer.value().remarks()),
                        sentences(answer.assumptions()),
                        List.of(),
                        declaration.sources()),
                missing -> new SheetView(
                        declaration.name(),
                        declaration.title(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        missing.needs().stream().map(NeedView::of).toList(),
                        declaration.sources()));
    }

    private static List<Sentence> sentences(List<Phrase> phrases) {
        return phrases.stream().map(p -> Sentence.of(p, true)).toList();
    }

    private static List<ResultView> results(Declaration declaration, Results results) {
        List<ResultView> views = new ArrayList<>();
        for (Result result : declaration.results()) {
            Phrase.Part part = results.values().get(result.name());
            if (part instanceof Phrase.Figure figure) {
                FigureText text = FigureText.full(figure.value(), figure.unit());
                views.add(new ResultView(result.name(), result.meaning(), Optional.of(text), text.text()));
            } else if (part instanceof Phrase.Word word) {
                views.add(new ResultView(result.name(), result.meaning(), Optional.empty(), word.text()));
            }
        }
        return views;
    }

    /** As JSON; docs/json.md says what each key means. */
    public String json(String version) {
        Map<String, Object> json = FigureJson.document("sheet", version);
        json.put("sheet", name);
        Map<String, Object> all = new LinkedHashMap<>();
        for (ResultView result : results) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("meaning", result.meaning());
            result.figure()
                    .ifPresentOrElse(f -> one.putAll(FigureJson.figure(f)), () -> one.put("text", result.text()));
            all.put(result.name(), one);
        }
        json.put("results", all);
        json.put("remarks", FigureJson.sentences(remarks));
        json.put("assumed", FigureJson.sentences(assumed));
        json.put("needs", FigureJson.needs(needs));
        json.put("working", FigureJson.working(working));
        json.put("sources", sources);
        return JsonText.of(json);
    }
}
