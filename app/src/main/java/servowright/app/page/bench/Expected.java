package servowright.app.page.bench;

import java.util.List;
import servowright.app.view.MotorView.CandidateView;
import servowright.app.view.TestView;
import servowright.app.view.View;
import servowright.engine.known.Origin;

/** What is to be expected of a bench test before it is taken: what label, data sheet and declaration say. */
public final class Expected {
    private Expected() {}

    /** Every value of the same thing that was not measured, the best first. */
    public static List<CandidateView> of(View view, TestView test, String words) {
        return view.motors().stream()
                .filter(m -> m.name().equals(test.motor()))
                .flatMap(m -> m.parameters().stream())
                .filter(p -> p.words().equals(words))
                .flatMap(p -> p.candidates().stream())
                .filter(c -> !c.origin().equals(Origin.MEASURED.words()))
                .toList();
    }
}
