package servowright.engine.prediction;

import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.MagnetMaterial;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What flux linkage and resistance does a motor have at work: coldest magnets, warmest magnets, warmest winding? */
public final class WarmMotorStudy {
    /** Both parameters are kept at this temperature. */
    static final double REFERENCE_KELVIN = 293.15;

    private static final String MAGNETS =
            "reversible temperature coefficient of remanence, handbook ranges (from memory)";
    private static final String COPPER = "R(t) = R20 (234.5 + t) / (234.5 + 20), annealed copper";
    private static final Quantity USUAL_LIMIT = Quantity.of(100, "degC");
    private static final Quantity RATING_AMBIENT = Quantity.of(40, "degC");

    private WarmMotorStudy() {}

    /** Flux linkage with the magnets as cold as the surroundings get: most voltage per speed. */
    static Outcome<Known> coldFlux(AxisParts parts) {
        Inquiry in = new Inquiry();
        Optional<Known> coldest = parts.surroundings().known(SurroundingsFigure.COLDEST);
        Known kelvin = in.orAssume(
                coldest,
                Quantity.of(20, "degC"),
                Phrase.of(
                        "magnets taken at 20 degC, as coldest surroundings are not stated: colder ones give more voltage"));
        return flux(in, parts, "flux linkage, magnets as cold as the surroundings get", "λcold", kelvin);
    }

    /** Flux linkage with the magnets as warm as the winding may get: least torque per ampere. */
    static Outcome<Known> warmFlux(AxisParts parts) {
        Inquiry in = new Inquiry();
        Known kelvin = limit(in, parts);
        in.assume(Phrase.of("warm magnets taken as warm as the winding"));
        return flux(in, parts, "flux linkage, magnets as warm as the winding", "λwarm", kelvin);
    }

    /** Star-equivalent phase resistance with the winding at its limit. */
    static Outcome<Known> warmResistance(AxisParts parts) {
        Inquiry in = new Inquiry();
        Known kelvin = limit(in, parts);
        Supplier<Known> cold = in.take(parts.parameter(MotorParameter.PHASE_RESISTANCE));
        return in.answer(() -> in.sheet()
                .line(
                        "phase resistance, winding at its limit",
                        "{Rwarm} = {R} · (234.5 + {t}) / (234.5 + 20)",
                        "mohm",
                        Dimension.RESISTANCE,
                        COPPER,
                        x -> x[0] * Conductor.COPPER_IACS.resistanceFactor(REFERENCE_KELVIN, x[1]),
                        Term.of("R", cold.get(), "mohm"),
                        Term.of("t", kelvin, "degC")));
    }

    /** Winding temperature not to exceed. */
    static Known limit(Inquiry in, AxisParts parts) {
        return in.orAssume(
                parts.motorFigure(MotorFigure.WINDING_LIMIT),
                USUAL_LIMIT,
                Phrase.of("winding taken at {limit}, a usual limit of small motors, as none is stated")
                        .with("limit", USUAL_LIMIT, "degC"));
    }

    /** Highest air temperature. */
    static Known warmest(Inquiry in, AxisParts parts) {
        return in.orAssume(
                parts.surroundings().known(SurroundingsFigure.WARMEST),
                RATING_AMBIENT,
                Phrase.of("surroundings taken as {warmest}, as in motor ratings, as the warmest are not stated")
                        .with("warmest", RATING_AMBIENT, "degC"));
    }

    private static Outcome<Known> flux(Inquiry in, AxisParts parts, String label, String symbol, Known kelvin) {
        MagnetMaterial magnets = magnets(in, parts);
        Supplier<Known> known = in.take(parts.parameter(MotorParameter.FLUX_LINKAGE));
        return in.answer(() -> {
            Known flux = known.get();
            double half = magnets.perKelvinHalfRange() * Math.abs(kelvin.si() - REFERENCE_KELVIN) * flux.si();
            Known there = Propagation.derive(
                            Dimension.FLUX_LINKAGE,
                            x -> x[0] * magnets.fluxFactor(REFERENCE_KELVIN, x[1]),
                            List.of(flux, kelvin))
                    .withPart(Source.of("temperature coefficient of " + magnets.words()), half / Math.sqrt(3))
                    .as(Origin.DERIVED, label);
            Quantity perKelvin = new Quantity(magnets.perKelvin(), Dimension.TEMPERATURE_COEFFICIENT);
            return in.sheet()
                    .note(
                            label,
                            "{" + symbol + "} = {λ} · (1 + {α} · ({t} - 20 degC))",
                            "mWb",
                            MAGNETS,
                            there,
                            Term.of("λ", flux, "mWb"),
                            Term.of("α", Known.exact(perKelvin, Origin.ASSUMED, magnets.words()), "%/K"),
                            Term.of("t", kelvin, "degC"));
        });
    }

    private static MagnetMaterial magnets(Inquiry in, AxisParts parts) {
        return parts.motor()
                .flatMap(Motor::magnetMaterial)
                .map(m -> MagnetMaterial.valueOf(m.name()))
                .orElseGet(() -> {
                    in.assume(Phrase.of("rotor magnets taken as neodymium, as their material is not stated"));
                    return MagnetMaterial.NEODYMIUM;
                });
    }
}
