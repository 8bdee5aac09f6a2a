package servowright.app.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Figures, workings and needs as JSON: the strings shown everywhere, and beside them the plain numbers. */
final class FigureJson {
    /** Format of every JSON document; raised when a key changes its meaning or goes. */
    static final int FORMAT = 1;

    private FigureJson() {}

    /** A document of the kind named. */
    static Map<String, Object> document(String kind, String version) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("format", FORMAT);
        json.put("kind", kind);
        json.put("version", version);
        return json;
    }

    static Map<String, Object> figure(FigureText figure) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("text", figure.text());
        json.put("value", figure.inUnit());
        json.put("unit", figure.unit().symbol());
        json.put("si", figure.known().si());
        json.put("si_unit", figure.known().dimension().symbol());
        json.put("si_standard_uncertainty", figure.known().standardUncertainty());
        json.put("si_expanded_uncertainty", figure.known().expandedUncertainty());
        json.put("origin", figure.known().origin().words());
        json.put("from", figure.known().from());
        return json;
    }

    static List<Object> working(List<WorkingText> lines) {
        return lines.stream().map(FigureJson::line).toList();
    }

    private static Object line(WorkingText line) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("label", line.label());
        json.put("formula", line.formula());
        json.put("numbers", line.numbers());
        json.put("result", figure(line.result()));
        json.put("source", line.source());
        json.put(
                "terms",
                line.terms().stream()
                        .map(t -> {
                            Map<String, Object> term = new LinkedHashMap<>();
                            term.put("symbol", t.symbol());
                            term.putAll(figure(t.figure()));
                            return term;
                        })
                        .toList());
        return json;
    }

    static List<Object> needs(List<NeedView> needs) {
        return needs.stream()
                .map(n -> {
                    Map<String, Object> json = new LinkedHashMap<>();
                    json.put("what", n.what());
                    json.put("settle", n.settle());
                    return (Object) json;
                })
                .toList();
    }

    static List<String> sentences(List<Sentence> sentences) {
        return sentences.stream().map(Sentence::text).toList();
    }
}
