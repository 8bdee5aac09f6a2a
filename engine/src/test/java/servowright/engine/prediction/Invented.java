package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Parameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Place;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Duty;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Key;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MagnetMaterial;
import servowright.engine.machine.Modulation;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Profile;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.StoppedQueue;
import servowright.engine.machine.Supply;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;

/**
 * An invented machine with two axes, to change one thing at a time. The arm is geared and lifts a weight; the roller is
 * driven directly. Everything holds as it stands.
 */
public final class Invented {
    public static final String ARM = "arm";
    public static final String ROLLER = "roller";

    private final Map<MotorFigure, List<String>> motor = new EnumMap<>(MotorFigure.class);
    private final Map<DriveFigure, List<String>> drive = new EnumMap<>(DriveFigure.class);
    private final Map<SupplyFigure, List<String>> supply = new EnumMap<>(SupplyFigure.class);
    private final Map<SensorFigure, List<String>> sensor = new EnumMap<>(SensorFigure.class);
    private final Map<AxisFigure, List<String>> arm = new EnumMap<>(AxisFigure.class);
    private final Map<DutyFigure, List<String>> lift = new EnumMap<>(DutyFigure.class);
    private final Map<MotorParameter, Known> known = new EnumMap<>(MotorParameter.class);
    private final Map<MotorParameter, List<Candidate>> candidates = new EnumMap<>(MotorParameter.class);
    private final InventedBus bus = new InventedBus();
    private final List<Contradiction> contradictions = new ArrayList<>();
    private final List<TestResult> tests = new ArrayList<>();
    private final Map<String, IdentifiedAxis> sensed = new LinkedHashMap<>();
    private final List<UnaryOperator<InventedCapture>> captures = new ArrayList<>();
    private final Map<String, Duty> moreDuties = new LinkedHashMap<>();
    private SensorKind sensorKind = SensorKind.ON_AXIS_MAGNETIC;
    private SupplyKind supplyKind = SupplyKind.BATTERY;
    private Profile profile = Profile.TRAPEZOID;
    private Modulation modulation = Modulation.SPACE_VECTOR;
    private String coldest = "0 degC";
    private String warmest = "30 degC";

    private Invented() {}

    /** The machine on which everything holds. */
    public static Invented sound() {
        return new Invented()
                .motor(MotorFigure.MAGNETS, "14")
                .motor(MotorFigure.SLOTS, "12")
                .motor(MotorFigure.DETENTS, "84")
                .motor(MotorFigure.RATED_CURRENT, "12 A [q axis, label]")
                .motor(MotorFigure.WINDING_LIMIT, "110 degC")
                .motor(MotorFigure.THERMAL_RESISTANCE, "2 K/W ± 0.1 K/W [measured]")
                .drive(DriveFigure.VOLTAGE, "12..36 V")
                .drive(DriveFigure.TRIP_VOLTAGE, "38 V")
                .drive(DriveFigure.CONTINUOUS_CURRENT, "10 A [q axis]")
                .drive(DriveFigure.PEAK_CURRENT, "25 A [q axis]")
                .drive(DriveFigure.POWER, "250 W")
                .drive(DriveFigure.ELECTRICAL_FREQUENCY, "1000 Hz")
                .drive(DriveFigure.LOOP_RATE, "20 kHz")
                .drive(DriveFigure.RESERVE, "10 %")
                .supply(SupplyFigure.VOLTAGE, "20..29 V")
                .supply(SupplyFigure.RESISTANCE, "40 mohm")
                .supply(SupplyFigure.TAKES_BACK, "15 A")
                .supply(SupplyFigure.FUSE, "40 A")
                .supply(SupplyFigure.CAPACITANCE, "2 mF")
                .sensor(SensorFigure.FIELD, "25..110 mT")
                .sensor(SensorFigure.DEPTH, "0.35 mm")
                .arm(AxisFigure.MAGNET_DIAMETER, "8 mm")
                .arm(AxisFigure.MAGNET_LENGTH, "3 mm")
                .arm(AxisFigure.MAGNET_REMANENCE, "1.20 T")
                .arm(AxisFigure.GAP, "1.9 mm ± 0.2 mm")
                .arm(AxisFigure.SENSOR_OFFSET, "0.2 mm")
                .arm(AxisFigure.MOTOR_TURNS, "9")
                .arm(AxisFigure.GEAR_EFFICIENCY, "0.85")
                .arm(AxisFigure.LOAD_INERTIA, "0.02 kg m2")
                .arm(AxisFigure.LOAD_FRICTION, "0.5 N m")
                .arm(AxisFigure.LOAD_TORQUE, "1.5 N m")
                .lift(DutyFigure.TRAVEL, "2 turns")
                .lift(DutyFigure.SPEED, "150 rpm")
                .lift(DutyFigure.ACCELERATION, "30 rad/s2")
                .lift(DutyFigure.REST, "1 s")
                .known(MotorParameter.POLE_PAIRS, 7, "", 0)
                .known(MotorParameter.FLUX_LINKAGE, 5.0, "mWb", 0.01)
                .known(MotorParameter.PHASE_RESISTANCE, 0.10, "ohm", 0.001)
                .known(MotorParameter.D_INDUCTANCE, 40, "uH", 1)
                .known(MotorParameter.Q_INDUCTANCE, 45, "uH", 1)
                .known(MotorParameter.ROTOR_INERTIA, 0.6, "kg cm2", 0.02);
    }

    public Invented motor(MotorFigure key, String... text) {
        motor.put(key, List.of(text));
        return this;
    }

    public Invented drive(DriveFigure key, String... text) {
        drive.put(key, List.of(text));
        return this;
    }

    public Invented supply(SupplyFigure key, String... text) {
        supply.put(key, List.of(text));
        return this;
    }

    public Invented sensor(SensorFigure key, String... text) {
        sensor.put(key, List.of(text));
        return this;
    }

    public Invented sensor(SensorKind kind) {
        sensorKind = kind;
        return this;
    }

    public Invented bus(BusFigure key, String... text) {
        bus.figure(key, text);
        return this;
    }

    public Invented queue(StoppedQueue what) {
        bus.queue(what);
        return this;
    }

    /** A message of 8 bytes from the host. */
    public Invented message(String name, int id, String period) {
        bus.message(name, id, period);
        return this;
    }

    /** A controller at 80 MHz. */
    public Invented controller(String node, int prescaler, int prop, int one, int two) {
        bus.controller(node, prescaler, prop, one, two);
        return this;
    }

    public Invented arm(AxisFigure key, String... text) {
        arm.put(key, List.of(text));
        return this;
    }

    public Invented lift(DutyFigure key, String... text) {
        lift.put(key, List.of(text));
        return this;
    }

    public Invented lift(Profile other) {
        profile = other;
        return this;
    }

    public Invented sine() {
        modulation = Modulation.SINUSOIDAL;
        return this;
    }

    public Invented coldest(String text) {
        coldest = text;
        return this;
    }

    public Invented warmest(String text) {
        warmest = text;
        return this;
    }

    public Invented mains() {
        supplyKind = SupplyKind.MAINS;
        return this;
    }

    /** A further duty of the arm. */
    public Invented duty(String name, Profile shape, Map<DutyFigure, String> figures) {
        Map<DutyFigure, List<String>> lists = new EnumMap<>(DutyFigure.class);
        figures.forEach((k, v) -> lists.put(k, List.of(v)));
        moreDuties.put(name, new Duty(name, place("duties / " + name), shape, figures(DutyFigure.class, lists, name)));
        return this;
    }

    /** A parameter of the motor as the bench found it. */
    public Invented known(MotorParameter what, double number, String unit, double standardUncertainty) {
        double u = unit.isEmpty()
                ? standardUncertainty
                : Quantity.of(standardUncertainty, unit).si();
        known.put(
                what, Known.of(Quantity.of(number, unit), u, Source.of("bench " + what), Origin.MEASURED, "the bench"));
        return this;
    }

    public Invented without(MotorParameter what) {
        known.remove(what);
        return this;
    }

    public Invented without(Key.Named key) {
        motor.keySet().removeIf(k -> k.equals(key));
        drive.keySet().removeIf(k -> k.equals(key));
        supply.keySet().removeIf(k -> k.equals(key));
        sensor.keySet().removeIf(k -> k.equals(key));
        arm.keySet().removeIf(k -> k.equals(key));
        lift.keySet().removeIf(k -> k.equals(key));
        return this;
    }

    /** Two values of one parameter that cannot both be right. */
    public Invented contradiction(MotorParameter what, Candidate first, Candidate second, String factor) {
        Known ratio = second.value().over(first.value());
        contradictions.add(new Contradiction(
                "spinner", what, first, second, ratio, factor.isEmpty() ? Optional.empty() : Optional.of(factor)));
        candidates.put(what, List.of(first, second));
        return this;
    }

    /** All values there are of one parameter. */
    public Invented candidates(MotorParameter what, Candidate... all) {
        candidates.put(what, List.of(all));
        return this;
    }

    public Invented test(TestResult result) {
        tests.add(result);
        return this;
    }

    /** What the bench saw of the angle sensor of the arm. */
    public Invented sensed(Map<AxisParameter, List<Candidate>> found, AngleEvidence... evidence) {
        sensed.put(ARM, new IdentifiedAxis(ARM, found, List.of(evidence), List.of()));
        return this;
    }

    public static Candidate candidate(double number, String unit, double relative, Origin origin, String from) {
        Quantity q = Quantity.of(number, unit);
        Known value = Known.of(q, relative * Math.abs(q.si()), Source.of(from), origin, from);
        return new Candidate(value, from, Working.NONE);
    }

    /** A capture of its bus: what the simulation of its plan gives, changed as said. */
    public Invented capture(UnaryOperator<InventedCapture> change) {
        captures.add(change);
        return this;
    }

    public Predictions predictions() {
        return Predictions.of(identified());
    }

    public IdentifiedMachine identified() {
        Map<MotorParameter, Parameter> parameters = new EnumMap<>(MotorParameter.class);
        for (MotorParameter what : MotorParameter.values()) {
            Known value = known.get(what);
            Outcome<Known> best = value == null
                    ? Outcome.missing(what.words() + " of spinner", "measure it")
                    : Outcome.answer(value, Working.NONE);
            parameters.put(what, new Parameter(what, best, candidates.getOrDefault(what, List.of())));
        }
        IdentifiedMotor spinner = new IdentifiedMotor("spinner", parameters, contradictions);
        return new IdentifiedMachine(machine(), Map.of("spinner", spinner), sensed, tests)
                .with(InventedCapture.all(machine(), captures));
    }

    public Machine machine() {
        Motor spinner = new Motor(
                "spinner",
                place("motors / spinner"),
                figures(MotorFigure.class, motor, "motors / spinner"),
                Optional.of(MagnetMaterial.NEODYMIUM));
        Drive bridge = new Drive(
                "bridge",
                place("drives / bridge"),
                figures(DriveFigure.class, drive, "drives / bridge"),
                Optional.of(modulation));
        Map<String, Axis> axes = new LinkedHashMap<>();
        Map<String, Duty> duties = new LinkedHashMap<>();
        duties.put("lift", new Duty("lift", place("lift"), profile, figures(DutyFigure.class, lift, "lift")));
        duties.putAll(moreDuties);
        axes.put(ARM, axis(ARM, figures(AxisFigure.class, arm, "axes / arm"), duties));
        axes.put(ROLLER, axis(ROLLER, rollerLoad(), Map.of("roll", roll())));
        return new Machine(
                "Invented machine",
                "",
                surroundings(),
                supply.isEmpty()
                        ? Optional.empty()
                        : Optional.of(
                                new Supply(supplyKind, place("supply"), figures(SupplyFigure.class, supply, "supply"))),
                Map.of("spinner", spinner),
                Map.of("bridge", bridge),
                Map.of("ring", ring()),
                axes,
                bus.declared());
    }

    private Sensor ring() {
        return new Sensor(
                "ring",
                place("sensors / ring"),
                figures(SensorFigure.class, sensor, "sensors / ring"),
                Optional.of(sensorKind));
    }

    private static Figures<AxisFigure> rollerLoad() {
        return figures(
                AxisFigure.class,
                Map.of(
                        AxisFigure.MOTOR_TURNS, List.of("1"),
                        AxisFigure.GEAR_EFFICIENCY, List.of("1"),
                        AxisFigure.LOAD_INERTIA, List.of("0.5 kg cm2"),
                        AxisFigure.LOAD_FRICTION, List.of("0.05 N m"),
                        AxisFigure.LOAD_TORQUE, List.of("0 N m")),
                "axes / roller");
    }

    private static Duty roll() {
        return new Duty(
                "roll",
                place("roll"),
                Profile.STEADY,
                figures(DutyFigure.class, Map.of(DutyFigure.SPEED, List.of("1000 rpm")), "roll"));
    }

    private Figures<SurroundingsFigure> surroundings() {
        return figures(
                SurroundingsFigure.class,
                Map.of(
                        SurroundingsFigure.COLDEST, List.of(coldest),
                        SurroundingsFigure.WARMEST, List.of(warmest)),
                "surroundings");
    }

    private static Axis axis(String name, Figures<AxisFigure> figures, Map<String, Duty> duties) {
        return new Axis(
                name,
                place("axes / " + name),
                Optional.of("spinner"),
                Optional.of("bridge"),
                Optional.of("ring"),
                figures,
                duties);
    }

    /** A figure as it could be written. */
    public static Declared declared(String text, String path) {
        return Declared.of((Stated) QuantityText.parse(text), place(path));
    }

    static Place place(String path) {
        return new Place("machine.yaml", 1, path);
    }

    static <K extends Enum<K> & Key.Named> Figures<K> figures(Class<K> keys, Map<K, List<String>> texts, String path) {
        Figures<K> all = Figures.none();
        for (K key : keys.getEnumConstants()) {
            for (String text : texts.getOrDefault(key, List.of())) {
                all = all.with(key, declared(text, path + " / " + key.key().path()));
            }
        }
        return all;
    }
}
