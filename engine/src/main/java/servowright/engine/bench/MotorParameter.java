package servowright.engine.bench;

/** What the predictions need to know of a motor, each on one fixed basis. */
public enum MotorParameter implements Sought {
    POLE_PAIRS("pole pairs", "p", "", "count the magnets, or state the speed of a recorded spin"),
    /** Peak magnet flux linkage of a star-equivalent phase, magnets at 20 degC. */
    FLUX_LINKAGE("flux linkage", "λ", "mWb", "drive the motor with its terminals open and record the voltage"),
    /** Star-equivalent phase resistance, winding at 20 degC. */
    PHASE_RESISTANCE(
            "phase resistance", "R", "mohm", "read voltage and current between two terminals, at two currents"),
    /** Star-equivalent phase inductance at no particular rotor position: somewhere between d and q. */
    PHASE_INDUCTANCE(
            "phase inductance",
            "L",
            "uH",
            "a voltage step on the locked rotor, or an inductance meter at the three pairs"),
    D_INDUCTANCE(
            "d inductance",
            "Ld",
            "uH",
            "a voltage step on the locked rotor, or an inductance meter at the three pairs"),
    Q_INDUCTANCE(
            "q inductance",
            "Lq",
            "uH",
            "a voltage step on the locked rotor, or an inductance meter at the three pairs"),
    ROTOR_INERTIA(
            "rotor inertia",
            "J",
            "kg cm2",
            "state it from the data sheet, or coast down twice, once with inertia added"),
    /** Drag that does not depend on speed: dry friction and hysteresis together. */
    DRY_DRAG("dry drag", "Tc", "mN m", "coast down with known inertia"),
    /** Drag per speed: grease and eddy currents together. */
    VISCOUS_DRAG("viscous drag", "b", "uN m s/rad", "coast down with known inertia"),
    /** Largest less smallest torque over the position of the free shaft. */
    COGGING_TORQUE(
            "cogging torque",
            "Tcg",
            "mN m",
            "hold the free shaft at many angles all around, forward and back, and record angle and current"),
    /** Temperature of the winding above the air per watt of loss, as it was mounted. */
    THERMAL_RESISTANCE(
            "thermal resistance",
            "Rth",
            "K/W",
            "load it until its temperature settles, and read the winding while it cools"),
    /** Of the thermal resistance, the part inside the motor. */
    WINDING_TO_HOUSING("winding to housing", "Rwh", "K/W", Caption.WARMING),
    HOUSING_TO_AIR("housing to air", "Rha", "K/W", Caption.WARMING),
    /** Heat that warms the winding by a kelvin. */
    WINDING_CAPACITY("winding capacity", "Cw", "J/K", Caption.WARMING),
    HOUSING_CAPACITY("housing capacity", "Ch", "J/K", Caption.WARMING);

    private final Caption caption;

    MotorParameter(String words, String symbol, String unit, String settle) {
        this.caption = new Caption(words, symbol, unit, settle);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
