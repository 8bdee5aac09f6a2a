package servowright.engine.encoder;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Require;

/**
 * The field across the axis and its change with the gap, from magnitudes read at several shims. It needs no size and no
 * strength of the magnet, and holds for any magnet with one north and one south pole.
 *
 * <p><b>Formula.</b> A parabola through ln B against the gap at its middle: B'/B = c1, B''/B = c1² + 2 c2, κ = −B''/(8B).
 * <b>Validity.</b> Three readings give the figures without an uncertainty; the parabola in the logarithm follows a disc of
 * 6 mm within 3 % of B'' over a span of 1 mm. <b>Source.</b> Derived.
 *
 * @param middleMetre gap, in the readings' own zero, that the figures hold for
 * @param strength magnitude there, in the unit that was read
 * @param relativeSlopePerMetre β = B'/B
 * @param relativeSlopeError its standard error; NaN for three readings
 * @param kappaPerSquareMetre κ
 * @param kappaError its standard error; NaN for three readings
 */
public record MeasuredAxisField(
        double middleMetre,
        double strength,
        double relativeSlopePerMetre,
        double relativeSlopeError,
        double kappaPerSquareMetre,
        double kappaError) {

    private static final int FEWEST = 3;

    /**
     * From gaps, of which only the differences matter, and magnitudes in any unit. Empty if the gaps do not tell a
     * parabola.
     */
    public static Optional<MeasuredAxisField> of(double[] gapsMetre, double[] magnitudes) {
        Require.atLeast("number of gaps", FEWEST, gapsMetre.length);
        double least = Arrays.stream(gapsMetre).min().orElseThrow();
        double most = Arrays.stream(gapsMetre).max().orElseThrow();
        double middle = (least + most) / 2;
        double half = Math.max((most - least) / 2, Double.MIN_NORMAL);
        double[] place = Arrays.stream(gapsMetre).map(g -> (g - middle) / half).toArray();
        double[] logarithm = Arrays.stream(magnitudes)
                .map(b -> Math.log(Require.positive("magnitude", b, "")))
                .toArray();
        Design parabola = Design.polynomial(place, 2);
        LinearFit fit = gapsMetre.length > FEWEST
                ? LinearFit.of(parabola, logarithm)
                : LinearFit.withKnownSigma(parabola, logarithm, ReferencedFit.ones(FEWEST));
        double scale = gapsMetre.length > FEWEST ? 1 : Double.NaN;
        return fit.status().converged() ? Optional.of(of(fit, middle, half, scale)) : Optional.empty();
    }

    private static MeasuredAxisField of(LinearFit fit, double middle, double half, double scale) {
        double slope = fit.parameter(1) / half;
        double bend = 2 * fit.parameter(2) / (half * half);
        double bendError = scale * 2 * fit.standardError(2) / (half * half);
        double slopeError = scale * fit.standardError(1) / half;
        return new MeasuredAxisField(
                middle,
                Math.exp(fit.parameter(0)),
                slope,
                slopeError,
                -(slope * slope + bend) / 8,
                Math.hypot(2 * slope * slopeError, bendError) / 8);
    }
}
