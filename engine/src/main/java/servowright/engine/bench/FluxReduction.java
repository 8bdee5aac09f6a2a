package servowright.engine.bench;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.BackEmf;
import servowright.engine.motor.MagnetMaterial;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.VoltageBasis;

/** From fundamental and frequency of an open-circuit voltage to the flux linkage with the magnets at 20 degC. */
final class FluxReduction {
    private static final String FARADAY = "Faraday's law for the fundamental; factors of the bases by sine geometry";

    private final BenchTest test;
    private final Motor motor;
    private final Working.Sheet sheet = Working.begin();
    private final List<Known> fluxes = new ArrayList<>();
    private final List<String> names = new ArrayList<>();
    private final List<Phrase> assumptions = new ArrayList<>();

    FluxReduction(BenchTest test, Motor motor) {
        this.test = test;
        this.motor = motor;
    }

    /** Says that a torque constant tells the flux linkage only with the pole pairs. */
    static void askForPolePairs(ResultSheet result, BenchTest test, Motor motor) {
        result.missing(
                MotorParameter.FLUX_LINKAGE,
                "pole pairs of " + motor.name() + ", for the flux linkage from " + test.id(),
                "count the magnets, or state pole_pairs");
    }

    void assume(Phrase phrase) {
        if (!assumptions.contains(phrase)) {
            assumptions.add(phrase);
        }
    }

    Working.Sheet sheet() {
        return sheet;
    }

    /** Basis of a voltage between these contacts. */
    static VoltageBasis basis(HookUp hookUp, boolean rms) {
        boolean line = hookUp == HookUp.TWO_TERMINALS;
        if (rms) {
            return line ? VoltageBasis.LINE_RMS : VoltageBasis.PHASE_RMS;
        }
        return line ? VoltageBasis.LINE_PEAK : VoltageBasis.PHASE_PEAK;
    }

    /** One voltage at one frequency; gives the flux linkage at the temperature of the test. */
    Known add(String name, Known volt, VoltageBasis basis, Known hertz) {
        Known flux = flux(sheet, name, volt, basis, hertz);
        fluxes.add(flux);
        names.add(name);
        return flux;
    }

    /** The flux linkage that a voltage would mean on a basis. */
    static Known flux(Working.Sheet sheet, String name, Known volt, VoltageBasis basis, Known hertz) {
        return sheet.line(
                "flux linkage from " + name,
                "{λT} = {E} / (" + factor(basis) + " · 2π · {f})",
                "mWb",
                Dimension.FLUX_LINKAGE,
                FARADAY,
                v -> BackEmf.fluxLinkageWeberPeak(v[0], basis, v[1]),
                Term.of("E", volt, "V"),
                Term.of("f", hertz, "Hz"));
    }

    /** One torque constant per q-axis ampere. */
    Known addTorque(String name, Known newtonMetrePerAmp, Known polePairs) {
        Known flux = sheet.line(
                "flux linkage from " + name,
                "{λT} = {Kt} / (3/2 · {p})",
                "mWb",
                Dimension.FLUX_LINKAGE,
                "air-gap power, T ω = 3/2 e iq",
                v -> MotorConstants.ofTorqueConstant(v[0], CurrentBasis.Q_AXIS)
                        .fluxLinkageWeberPeak((int) Math.round(v[1])),
                Term.of("Kt", newtonMetrePerAmp, "N m/A"),
                Term.of("p", polePairs));
        fluxes.add(flux);
        names.add(name);
        return flux;
    }

    List<Known> fluxes() {
        return List.copyOf(fluxes);
    }

    /** The mean of all voltages added, with the magnets at 20 degC. */
    Candidate result() {
        Known mean = Combination.mean(sheet, fluxes, names);
        Surroundings magnets = Surroundings.of(test, TestFigure.MAGNETS_AT, "magnets");
        magnets.assumptions().forEach(this::assume);
        Known coefficient = coefficient();
        Known cold = sheet.line(
                "flux linkage, magnets at 20 degC",
                "{λ} = {λT} / (1 + {α} · ({T} − 20 °C))",
                "mWb",
                Dimension.FLUX_LINKAGE,
                "definition of the temperature coefficient; ranges of handbooks, from memory",
                v -> BackEmf.atTwentyCelsius(v[0], v[1], v[2]),
                Term.of("λT", mean, "mWb"),
                Term.of("α", coefficient, "%/K"),
                Term.of("T", magnets.kelvin(), "degC"));
        return new Candidate(cold.as(Origin.MEASURED, test.place().text()), test.id(), sheet.end(), assumptions);
    }

    private Known coefficient() {
        MagnetMaterial material = motor.magnetMaterial()
                .map(m -> MagnetMaterial.valueOf(m.name()))
                .orElse(MagnetMaterial.NEODYMIUM);
        Origin origin = motor.magnetMaterial().isPresent() ? Origin.DECLARED : Origin.ASSUMED;
        if (motor.magnetMaterial().isEmpty()) {
            assume(Phrase.of("magnet material of " + motor.name() + " not stated; neodymium assumed"));
        }
        double u = material.perKelvinHalfRange() / Math.sqrt(3);
        Quantity perKelvin = new Quantity(material.perKelvin(), Dimension.TEMPERATURE_COEFFICIENT);
        return Known.of(perKelvin, u, Source.of("magnet coefficient of " + motor.name()), origin, material.words());
    }

    private static String factor(VoltageBasis basis) {
        return switch (basis) {
            case LINE_PEAK -> "√3";
            case LINE_RMS -> "√(3/2)";
            case PHASE_PEAK -> "1";
            case PHASE_RMS -> "1/√2";
            case SIX_STEP -> "3√3/π";
        };
    }
}
