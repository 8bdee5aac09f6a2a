package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import servowright.engine.known.Phrase;
import servowright.engine.numeric.Harmonic;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/** Figures of a spin beyond flux linkage and pole pairs: harmonics, distortion, offset, sequence, spread of the pairs. */
final class SpinDetails {
    private static final int MOST_HARMONICS = 5;
    private static final double STANDS_OUT = 3;
    private static final double LEAST_SHARE = 1e-3;
    private static final int MOST_POINTS = 600;
    private static final double PERIODS_SHOWN = 3;

    private SpinDetails() {}

    static List<Phrase> of(List<SpinFit> fits, List<ChannelRole> roles) {
        List<Phrase> details = new ArrayList<>();
        fits.forEach(fit -> channel(fit, details));
        List<SpinFit> pairs = new ArrayList<>();
        List<Contacts> contacts = new ArrayList<>();
        for (int i = 0; i < fits.size(); i++) {
            if (roles.get(i).contacts().isPresent()) {
                pairs.add(fits.get(i));
                contacts.add(roles.get(i).contacts().get());
            }
        }
        if (threeAlike(contacts)) {
            spread(pairs, details);
            sequence(pairs, contacts, details);
        }
        return details;
    }

    private static void channel(SpinFit fit, List<Phrase> details) {
        String name = fit.trace().channel();
        int highest =
                fit.fit().harmonics().get(fit.fit().harmonics().size() - 1).order();
        details.add(Phrase.of(name
                        + ": {E} peak at {f}, distortion {thd} (orders 2 to {k}), offset {dc}, left over {rest} rms")
                .with("E", volt(fit.volt()), "V")
                .with("f", Quantity.of(fit.hertz(), "Hz"), "Hz")
                .with("thd", Quantity.number(fit.distortion()), "%")
                .with("k", highest)
                .with("dc", volt(offset(fit)), "V")
                .with("rest", volt(fit.fit().residualSd()), "V"));
        fit.fit().harmonics().stream()
                .filter(h -> h.order() > 1
                        && h.amplitude() > STANDS_OUT * h.amplitudeStandardError()
                        && h.amplitude() > LEAST_SHARE * fit.volt())
                .sorted(Comparator.comparingDouble(Harmonic::amplitude).reversed())
                .limit(MOST_HARMONICS)
                .forEach(h -> details.add(Phrase.of(name + ": harmonic {k} is {E}, {share} of the fundamental")
                        .with("k", h.order())
                        .with("E", volt(h.amplitude()), "V")
                        .with("share", Quantity.number(h.amplitude() / fit.volt()), "%")));
        details.add(Phrase.of(name + ": a fit without harmonics would give {E} peak")
                .with("E", volt(fit.plainVolt()), "V"));
    }

    /** Offset in the middle of the record. */
    private static double offset(SpinFit fit) {
        return fit.fit().offset() + fit.fit().drift() * fit.trace().spanS() / 2;
    }

    private static boolean threeAlike(List<Contacts> contacts) {
        return contacts.size() == 3
                && contacts.stream().map(Contacts::index).distinct().count() == 3
                && contacts.stream().map(Contacts::hookUp).distinct().count() == 1
                && contacts.get(0).hookUp() != HookUp.ONE_AGAINST_TWO;
    }

    private static void spread(List<SpinFit> fits, List<Phrase> details) {
        double[] volts = fits.stream().mapToDouble(SpinFit::volt).sorted().toArray();
        double mean = Arrays.stream(volts).average().orElseThrow();
        details.add(Phrase.of("the three differ by {spread} from largest to smallest")
                .with("spread", Quantity.number((volts[2] - volts[0]) / mean), "%"));
    }

    private static void sequence(List<SpinFit> fits, List<Contacts> contacts, List<Phrase> details) {
        double[] phase = new double[3];
        for (int i = 0; i < 3; i++) {
            double turned = contacts.get(i).reversed() ? Math.PI : 0;
            phase[contacts.get(i).index()] = fits.get(i).phaseInMiddle() + turned;
        }
        double first = wrapped(phase[1] - phase[0]);
        double second = wrapped(phase[2] - phase[1]);
        String order = first < 0 && second < 0 ? "A, B, C" : first > 0 && second > 0 ? "A, C, B" : "unclear";
        details.add(Phrase.of("phase sequence " + order + ": {first} and {second} from one to the next")
                .with("first", Quantity.of(Math.toDegrees(first), "deg"), "deg")
                .with("second", Quantity.of(Math.toDegrees(second), "deg"), "deg"));
    }

    private static double wrapped(double radian) {
        return Math.IEEEremainder(radian, 2 * Math.PI);
    }

    /** What was measured, the fit, and what is left, over the first periods. */
    static List<Curve> curves(SpinFit fit) {
        double shown = PERIODS_SHOWN / fit.hertz();
        int end = 0;
        while (end < fit.trace().count() && fit.trace().seconds()[end] <= shown) {
            end++;
        }
        int stride = 1 + end / MOST_POINTS;
        int n = (end + stride - 1) / stride;
        double[] x = new double[n];
        double[] measured = new double[n];
        double[] fitted = new double[n];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            int at = i * stride;
            x[i] = fit.trace().seconds()[at];
            measured[i] = fit.trace().values()[at];
            rest[i] = fit.fit().residuals().at(at);
            fitted[i] = measured[i] - rest[i];
        }
        String name = fit.trace().channel();
        return List.of(
                new Curve(name, x, measured, "ms", "V", Curve.Role.MEASURED),
                new Curve("fit", x, fitted, "ms", "V", Curve.Role.FITTED),
                new Curve("left over", x, rest, "ms", "V", Curve.Role.RESIDUAL));
    }

    private static Quantity volt(double v) {
        return Quantity.of(v, "V");
    }
}
