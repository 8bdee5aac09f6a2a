package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Two calibrations of one sensor that differ: the error is not in the sensor alone, or one run was disturbed. */
final class NotRepeatableRule implements SensorBenchRule {
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(0.1, 0.3);

    @Override
    public String id() {
        return "calibration-not-repeatable";
    }

    @Override
    public String source() {
        return "common practice, no source: harmonics of two runs agree within 0.1 degrees, beyond 0.3 one is wrong";
    }

    /** Two fits and the order in which they differ most. */
    private record Differing(IdentifiedAxis.Fit first, IdentifiedAxis.Fit second, int order, double rad) {}

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        List<IdentifiedAxis.Fit> fits = axis.fits().toList();
        Optional<Differing> worst = Optional.empty();
        for (int i = 1; i < fits.size(); i++) {
            Differing next = differing(fits.get(0), fits.get(i));
            if (worst.isEmpty() || next.rad() > worst.get().rad()) {
                worst = Optional.of(next);
            }
        }
        return worst.map(w -> answered(axis, w));
    }

    private static Differing differing(IdentifiedAxis.Fit first, IdentifiedAxis.Fit second) {
        int highest = Math.max(highest(first.fitted()), highest(second.fitted()));
        int order = 1;
        double most = 0;
        for (int k = 1; k <= highest; k++) {
            Ripple a = ripple(first.fitted(), k);
            Ripple b = ripple(second.fitted(), k);
            double apart = Math.hypot(a.cosineRad() - b.cosineRad(), a.sineRad() - b.sineRad());
            if (apart > most) {
                most = apart;
                order = k;
            }
        }
        return new Differing(first, second, order, most);
    }

    private static int highest(Calibration.Fitted fitted) {
        return fitted.error().ripples().stream().mapToInt(Ripple::order).max().orElse(0);
    }

    private static Ripple ripple(Calibration.Fitted fitted, int order) {
        return fitted.error().ripples().stream()
                .filter(r -> r.order() == order)
                .findFirst()
                .orElseGet(() -> new Ripple(order, 0, 0));
    }

    private Finding answered(IdentifiedAxis axis, Differing worst) {
        double scatter = Math.hypot(
                worst.first().fitted().amplitudeErrorRad(),
                worst.second().fitted().amplitudeErrorRad());
        Known apart = Known.of(
                new Quantity(worst.rad(), Dimension.ANGLE),
                scatter,
                Source.of(axis.name() + " scatter of two calibrations"),
                Origin.DERIVED,
                worst.first().from().test());
        Phrase statement = Phrase.of("harmonic {k} differs by {apart} between {one} and {other}, {comfortable} wanted")
                .with("k", worst.order())
                .with("apart", apart, "deg")
                .with("one", worst.first().from().test())
                .with("other", worst.second().from().test());
        return ALLOWED.judged(this, axis.name(), apart, statement)
                .because(Phrase.of(
                        "friction, gravity or a speed that ripples is in one of them, or the mount has moved"))
                .remedy(Phrase.of(
                        "repeat with more current and the shaft upright; free runs at three speeds tell the shaft"
                                + " from the sensor"))
                .wouldSettle("the difference of the calibrations", "longer runs")
                .done();
    }
}
