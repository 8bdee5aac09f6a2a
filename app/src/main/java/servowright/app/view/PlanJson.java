package servowright.app.view;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A bench plan as JSON; docs/json.md says what each key means. */
public final class PlanJson {
    private PlanJson() {}

    public static String of(View view, List<PlanView> plan) {
        Map<String, Object> json = FigureJson.document("plan", view.version());
        json.put("machine", view.name());
        json.put("parts", plan.stream().map(PlanJson::part).toList());
        json.put("cautions", view.cautions());
        return JsonText.of(json);
    }

    private static Object part(PlanView part) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("name", part.name());
        json.put("is", part.motor() ? "motor" : "axis");
        json.put("belongs", part.parts());
        json.put("steps", part.steps().stream().map(PlanJson::step).toList());
        return json;
    }

    private static Object step(PlanView.StepView step) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("number", step.number());
        json.put("test", step.kind());
        json.put("state", step.state().words());
        json.put("rank", step.rank());
        json.put("hook_up", FigureJson.sentences(step.hookUp()));
        json.put("step_cautions", FigureJson.sentences(step.cautions()));
        json.put(
                "expectations",
                step.expectations().stream().map(PlanJson::expectation).toList());
        json.put("settles", step.settles());
        json.put("stakes", step.stakes());
        json.put("made", step.tests());
        return json;
    }

    private static Object expectation(ExpectationView one) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("what", one.what());
        json.put("at", one.at().text());
        json.put("by", one.test());
        one.expected().ifPresent(e -> {
            json.put("expected", FigureJson.figure(e));
            json.put("window", one.window());
            json.put("drawn", one.drawn());
            json.put("from", one.from());
        });
        json.put("needs", FigureJson.needs(one.needs()));
        if (!one.read().isEmpty()) {
            json.put("read", one.reading());
        }
        one.inside().ifPresent(inside -> {
            json.put("inside", inside);
            json.put("off", one.off());
            json.put("factor", one.factor());
        });
        return json;
    }
}
