package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** A free run whose fit leaves something smooth: the motion or the error has orders that were not fitted. */
final class OrdersMissingRule implements SensorBenchRule {
    @Override
    public String id() {
        return "orders-missing";
    }

    @Override
    public String source() {
        return "Durbin and Watson 1950: about 2 for noise; below 1.5 neighbours resemble each other";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.fits()
                .filter(f -> f.fitted().polynomialOrder() > 0)
                .reduce((first, second) -> first.fitted().ordersMissing() ? first : second)
                .map(f -> answered(axis, f));
    }

    private Finding answered(IdentifiedAxis axis, IdentifiedAxis.Fit fit) {
        return Draft.of(this, axis.name())
                .verdict(fit.fitted().ordersMissing() ? Verdict.TIGHT : Verdict.HOLDS)
                .says(Phrase.of("{test} leaves {sd}, Durbin-Watson {dw} where noise has 2")
                        .with("test", fit.from().test())
                        .with("sd", new Quantity(fit.fitted().residualSdRad(), Dimension.ANGLE), "deg")
                        .with("dw", Math.rint(100 * fit.fitted().whiteness().durbinWatson()) / 100))
                .because(Phrase.of("what is left over is smooth: higher harmonics, or a motion with a jerk in it"))
                .remedy(Phrase.of("state more orders, or cut the run with from and to where it is undisturbed"))
                .done();
    }
}
