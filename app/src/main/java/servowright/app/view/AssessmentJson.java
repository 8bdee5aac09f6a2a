package servowright.app.view;

import java.util.LinkedHashMap;
import java.util.Map;

/** An assessment as JSON; docs/json.md says what each key means. */
public final class AssessmentJson {
    private AssessmentJson() {}

    public static String of(View view) {
        Map<String, Object> json = FigureJson.document("assessment", view.version());
        json.put("machine", view.name());
        json.put("about", view.about());
        json.put("extent", view.extent());
        Map<String, Object> counts = new LinkedHashMap<>();
        counts.put("fails", view.counts().fails());
        counts.put("tight", view.counts().tight());
        counts.put("holds", view.counts().holds());
        counts.put("not_shown", view.counts().notShown());
        json.put("counts", counts);
        json.put(
                "findings",
                view.findings().stream().map(AssessmentJson::finding).toList());
        json.put("motors", view.motors().stream().map(AssessmentJson::motor).toList());
        json.put("tests", view.tests().stream().map(AssessmentJson::test).toList());
        json.put(
                "narrowing",
                view.narrowing().stream().map(AssessmentJson::narrowing).toList());
        json.put("captures", view.captures().stream().map(CaptureJson::of).toList());
        json.put("assumed", view.assumed());
        json.put("notes", view.notes());
        json.put("cautions", view.cautions());
        Map<String, Object> files = new LinkedHashMap<>();
        view.files().forEach(f -> files.put(f.name(), f.sha256()));
        json.put("files", files);
        return JsonText.of(json);
    }

    private static Object finding(FindingView finding) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("key", finding.key());
        json.put("id", finding.id());
        json.put("subject", finding.subject());
        json.put("area", finding.area());
        json.put("verdict", finding.verdict().words());
        json.put("statement", finding.statement().text());
        json.put("reason", finding.reason().text());
        json.put("remedy", finding.remedy().text());
        json.put("needs", FigureJson.needs(finding.needs()));
        finding.margin().ifPresent(m -> {
            Map<String, Object> margin = new LinkedHashMap<>();
            margin.put("value", FigureJson.figure(m.value()));
            margin.put("limit", FigureJson.figure(m.limit()));
            margin.put("sense", m.atLeast() ? "at least" : "at most");
            json.put("margin", margin);
        });
        json.put("working", FigureJson.working(finding.working()));
        json.put("assumptions", FigureJson.sentences(finding.assumptions()));
        json.put("source", finding.source());
        return json;
    }

    private static Object narrowing(NarrowView narrow) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("motor", narrow.motor());
        json.put("parameter", narrow.parameter());
        json.put("finding", narrow.key());
        json.put("share", narrow.share());
        json.put("settle", narrow.settle());
        json.put("matters", narrow.matters());
        return json;
    }

    private static Object motor(MotorView motor) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", motor.name());
        Map<String, Object> parameters = new LinkedHashMap<>();
        motor.parameters().forEach(p -> parameters.put(p.words(), parameter(p)));
        json.put("parameters", parameters);
        json.put(
                "contradictions",
                motor.contradictions().stream()
                        .map(AssessmentJson::contradiction)
                        .toList());
        return json;
    }

    private static Object parameter(MotorView.ParameterView parameter) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("symbol", parameter.symbol());
        parameter.best().ifPresent(b -> json.put("best", FigureJson.figure(b)));
        json.put("needs", FigureJson.needs(parameter.needs()));
        json.put(
                "candidates",
                parameter.candidates().stream().map(AssessmentJson::candidate).toList());
        Map<String, Object> budget = new LinkedHashMap<>();
        parameter.budget().forEach(s -> budget.put(s.source(), s.share()));
        json.put("uncertainty_from", budget);
        return json;
    }

    private static Object candidate(MotorView.CandidateView candidate) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("from", candidate.from());
        json.put("figure", FigureJson.figure(candidate.figure()));
        json.put("working", FigureJson.working(candidate.working()));
        return json;
    }

    private static Object contradiction(MotorView.ContradictionView contradiction) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("text", contradiction.text());
        json.put("parameter", contradiction.parameter());
        json.put("first", candidate(contradiction.first()));
        json.put("second", candidate(contradiction.second()));
        json.put("ratio", FigureJson.figure(contradiction.ratio()));
        json.put("factor", contradiction.factor());
        return json;
    }

    private static Object test(TestView test) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("id", test.id());
        json.put("kind", test.kind());
        json.put("motor", test.motor());
        json.put("place", test.place());
        Map<String, Object> values = new LinkedHashMap<>();
        test.values().forEach(v -> values.put(v.words(), outcome(v)));
        json.put("values", values);
        json.put("details", FigureJson.sentences(test.details()));
        json.put("remarks", FigureJson.sentences(test.remarks()));
        return json;
    }

    private static Object outcome(TestView.ValueView value) {
        return value.value()
                .map(AssessmentJson::candidate)
                .orElseGet(() -> Map.of("needs", FigureJson.needs(value.needs())));
    }
}
