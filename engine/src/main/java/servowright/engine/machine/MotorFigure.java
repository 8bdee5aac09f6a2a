package servowright.engine.machine;

import static servowright.engine.machine.Key.Qualifier.CURRENT_BASIS;
import static servowright.engine.machine.Key.Qualifier.HOOK_UP;
import static servowright.engine.machine.Key.Qualifier.TEMPERATURE;
import static servowright.engine.machine.Key.Qualifier.VOLTAGE_BASIS;

import servowright.engine.quantity.Quantity;

/** What can be declared of a motor. */
public enum MotorFigure implements Key.Named {
    MAGNETS(Key.count("magnets", "magnet poles counted on the rotor; half of them are the pole pairs", 2, 400, "20")),
    POLE_PAIRS(Key.count("pole_pairs", "pole pairs as someone states them", 1, 200, "10 [label]")),
    SLOTS(Key.count("slots", "stator slots counted", 3, 600, "18")),
    DETENTS(Key.count("detents", "cogging detents felt in one turn of the shaft", 4, 10_000, "180")),
    SPEED_CONSTANT(Key.figure(
                    "speed_constant",
                    "speed per volt",
                    q(0.01, "rpm/V"),
                    q(100_000, "rpm/V"),
                    "42 rpm/V [line peak, label]")
            .stating(VOLTAGE_BASIS, TEMPERATURE)
            .repeatable()),
    EMF_CONSTANT(Key.figure(
                    "emf_constant",
                    "back-EMF per speed",
                    q(0.01, "mV s/rad"),
                    q(1000, "V s/rad"),
                    "131 mV s/rad [phase peak]")
            .stating(VOLTAGE_BASIS, TEMPERATURE)
            .repeatable()),
    TORQUE_CONSTANT(Key.figure(
                    "torque_constant",
                    "torque per ampere",
                    q(0.001, "mN m/A"),
                    q(1000, "N m/A"),
                    "0.197 N m/A [q axis]")
            .stating(CURRENT_BASIS, TEMPERATURE)
            .repeatable()),
    FLUX_LINKAGE(
            Key.figure("flux_linkage", "magnet flux linkage per phase, peak", q(0.001, "mWb"), q(100, "Wb"), "13.1 mWb")
                    .stating(VOLTAGE_BASIS, TEMPERATURE)
                    .repeatable()),
    RESISTANCE(Key.figure(
                    "resistance",
                    "winding resistance",
                    q(10, "uohm"),
                    q(10, "kohm"),
                    "0.24 ohm [two terminals, 20 degC, label]")
            .stating(HOOK_UP, TEMPERATURE)
            .repeatable()),
    INDUCTANCE(
            Key.figure("inductance", "winding inductance", q(0.1, "uH"), q(10, "H"), "0.31 mH [two terminals, label]")
                    .stating(HOOK_UP)
                    .repeatable()),
    D_INDUCTANCE(
            Key.figure("d_inductance", "inductance on the magnet axis, per phase", q(0.1, "uH"), q(10, "H"), "140 uH")),
    Q_INDUCTANCE(Key.figure(
            "q_inductance", "inductance across the magnet axis, per phase", q(0.1, "uH"), q(10, "H"), "165 uH")),
    ROTOR_INERTIA(Key.figure(
            "rotor_inertia", "moment of inertia of the rotor", q(0.001, "g cm2"), q(1000, "kg m2"), "9.5 kg cm2")),
    RATED_CURRENT(Key.figure(
                    "rated_current",
                    "current it may carry for good",
                    q(1, "mA"),
                    q(10_000, "A"),
                    "5 A [phase rms, label]")
            .stating(CURRENT_BASIS)),
    PEAK_CURRENT(Key.figure("peak_current", "current it may carry briefly", q(1, "mA"), q(10_000, "A"), "15 A [q axis]")
            .stating(CURRENT_BASIS)),
    RATED_TORQUE(Key.figure(
            "rated_torque", "torque it may give for good", q(0.01, "mN m"), q(100, "kN m"), "0.9 N m [label]")),
    TOP_SPEED(Key.figure("top_speed", "speed the rotor stands", q(1, "rpm"), q(500_000, "rpm"), "4000 rpm [label]")),
    WINDING_LIMIT(Key.figure(
            "winding_limit", "winding temperature not to exceed", q(40, "degC"), q(300, "degC"), "110 degC")),
    THERMAL_RESISTANCE(Key.figure(
            "thermal_resistance",
            "temperature rise of the winding per watt of loss",
            q(0.001, "K/W"),
            q(1000, "K/W"),
            "2.1 K/W [data sheet]")),
    THERMISTOR_RESISTANCE(Key.figure(
            "thermistor.resistance", "its resistance at 25 degC", q(1, "ohm"), q(100, "Mohm"), "10 kohm ± 3 %")),
    THERMISTOR_BETA(Key.figure("thermistor.beta", "its beta", q(100, "K"), q(20_000, "K"), "3435 K ± 1 %")),
    NO_LOAD_CURRENT(
            Key.figure("no_load_current", "current when it turns free", q(0.1, "mA"), q(1000, "A"), "0.4 A [q axis]")
                    .stating(CURRENT_BASIS));

    private final Key key;

    MotorFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }

    private static Quantity q(double number, String unit) {
        return Quantity.of(number, unit);
    }
}
