package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of a bench test as a whole. */
public enum TestFigure implements Key.Named {
    SPEED(Key.figure("speed", "speed of the shaft", q(0.01, "rpm"), q(500_000, "rpm"), "410 rpm ± 2 rpm")),
    MAGNETS_AT(Key.figure("magnets_at", "temperature of the magnets", q(-80, "degC"), q(300, "degC"), "19 degC")),
    WINDING_AT(Key.figure("winding_at", "temperature of the winding", q(-80, "degC"), q(300, "degC"), "21 degC")),
    LEADS(Key.figure("leads", "resistance of the leads, to be taken off", q(0, "mohm"), q(100, "ohm"), "12 mohm")),
    STEP_VOLTAGE(Key.figure("step_voltage", "voltage of the step", q(1, "mV"), q(1000, "V"), "2.0 V ± 1 %")),
    SHUNT(Key.figure("shunt", "resistance of the shunt in series", q(1, "uohm"), q(10, "kohm"), "0.1 ohm ± 1 %")),
    SAMPLE_INTERVAL(Key.figure("sample_interval", "time between two samples", q(0.01, "ns"), q(1, "h"), "20 us")),
    INERTIA(Key.figure("inertia", "inertia of all that turns", q(1e-4, "g cm2"), q(1e6, "kg m2"), "9.8 kg cm2")),
    ADDED_INERTIA(Key.figure(
            "added_inertia", "known inertia added for the test", q(1e-4, "g cm2"), q(1e6, "kg m2"), "5.0 kg cm2")),
    COLD_RESISTANCE(Key.figure(
            "cold_resistance",
            "resistance of the cold winding, between the same terminals",
            q(10, "uohm"),
            q(10, "kohm"),
            "239.6 mohm")),
    AIR_AT(Key.figure("air_at", "temperature of the air at the end", q(-80, "degC"), q(100, "degC"), "22 degC")),
    LOSS(Key.figure("loss", "heat put in at the end", q(1, "mW"), q(100, "kW"), "14 W ± 2 %")),
    HEATING_CURRENT(Key.figure(
            "heating_current",
            "direct current through the terminals read, at the end",
            q(1, "mA"),
            q(10_000, "A"),
            "6.0 A ± 1 %")),
    ARM(Key.figure("arm", "lever arm from shaft to scale", q(0.1, "mm"), q(10, "m"), "120 mm ± 0.5 mm")),
    PROBE(Key.figure("probe", "probe factor to multiply by", Quantity.number(0.001), Quantity.number(10_000), "10")),
    FREQUENCY(Key.figure("frequency", "frequency of the sine put in", q(1e-6, "Hz"), q(100, "kHz"), "3.86 Hz")),
    APPLIED_VOLTAGE(Key.figure(
            "applied_voltage", "mean voltage at the terminals of the motor", q(1, "mV"), q(10, "kV"), "12 V")),
    DIVIDER(Key.figure(
            "divider",
            "fixed resistor of a divider, the thermistor between it and zero",
            q(1, "ohm"),
            q(100, "Mohm"),
            "10 kohm ± 1 %")),
    RESISTANCE_AT_25(Key.figure(
            "thermistor_resistance",
            "declared resistance of a thermistor at 25 degC",
            q(1, "ohm"),
            q(100, "Mohm"),
            "10 kohm")),
    BETA(Key.figure("beta", "declared beta of a thermistor", q(100, "K"), q(20_000, "K"), "3435 K")),
    THERMISTOR_A(Key.figure(
            "thermistor_a",
            "declared constant of a thermistor, 1/T = a + b ln R + c (ln R)^3",
            Quantity.number(-1),
            Quantity.number(1),
            "1.40e-3")),
    THERMISTOR_B(Key.figure(
            "thermistor_b",
            "declared factor of ln R of a thermistor",
            Quantity.number(1e-9),
            Quantity.number(1),
            "2.37e-4")),
    THERMISTOR_C(Key.figure(
            "thermistor_c",
            "declared factor of the cube of ln R of a thermistor",
            Quantity.number(-1),
            Quantity.number(1),
            "9.90e-8")),
    FIELD_CURRENT(Key.figure(
            "field_current",
            "current of the field that holds or drags the rotor, phase peak",
            q(1, "mA"),
            q(10_000, "A"),
            "4.0 A")),
    ORDERS(Key.count("orders", "highest harmonic of the angle error to look for", 1, 32, "4"));

    private final Key key;

    TestFigure(Key key) {
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
