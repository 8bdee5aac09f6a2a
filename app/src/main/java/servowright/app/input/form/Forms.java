package servowright.app.input.form;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Key;
import servowright.engine.machine.MagnetMaterial;
import servowright.engine.machine.Modulation;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Profile;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/**
 * The forms of {@code machine.yaml} and {@code bench.yaml}. Figures come from the enumerations of {@code engine.machine};
 * only what is no figure is written here.
 */
public final class Forms {
    private static final Map<String, String> GROUPS = Map.of(
            "current", "motor currents it gives",
            "thermistor", "the sensor of temperature in the winding",
            "mount", "how the sensor and its magnet sit",
            "magnet", "the sensor magnet",
            "gear", "between motor and output",
            "load", "what the axis moves, at its output",
            "command", "what the host sends to each axis",
            "feedback", "what each axis sends back",
            "service", "reading and writing of settings");

    private Forms() {}

    /** What may stand in machine.yaml. */
    public static Shape.Group machine() {
        return new Shape.Group(List.of(
                Field.of("machine", "what the machine is called", "Frost cart", Shape.Words.any()),
                Field.of(
                        "about",
                        "a sentence or two about it",
                        "Patrols an orchard on frost nights.",
                        Shape.Words.any()),
                Field.group("surroundings", "the place it works in", group(figures(SurroundingsFigure.values()))),
                Field.group("supply", "what feeds it", supply()),
                named("motors", "motor", motor()),
                named("drives", "drive", drive()),
                named("sensors", "sensor", sensor()),
                named("axes", "axis", axis()),
                Field.group("bus", "the network between the drives", BusForm.bus())));
    }

    /** What may stand in bench.yaml. */
    public static Shape.Group bench() {
        Shape.Listed tests = new Shape.Listed("test", test());
        return group(List.of(
                Field.group("tests", "what was measured", tests),
                Field.group(
                        "captures",
                        "captures of the bus, held against its plan",
                        new Shape.Listed("capture", BusForm.capture()))));
    }

    /** Fuse and capacitance stand beside the source; everything else belongs to the source itself. */
    private static Shape.Group supply() {
        List<Field> beside = figures(SupplyFigure.FUSE, SupplyFigure.CAPACITANCE);
        List<Field> within = figures(Arrays.stream(SupplyFigure.values())
                .filter(f -> f != SupplyFigure.FUSE && f != SupplyFigure.CAPACITANCE)
                .toArray(SupplyFigure[]::new));
        List<Field> kinds = List.of(
                Field.group(SupplyKind.BATTERY.words(), "a battery: takes current back, up to a limit", group(within)),
                Field.group(SupplyKind.MAINS.words(), "a power supply unit on the mains", group(within)));
        return group(kinds, beside);
    }

    private static Shape.Group motor() {
        Shape choice = choice(MagnetMaterial.values(), MagnetMaterial::words);
        return group(
                figures(MotorFigure.values()),
                List.of(Field.of("magnet_material", "what the rotor magnets are made of", "neodymium", choice)));
    }

    private static Shape.Group drive() {
        Shape choice = choice(Modulation.values(), Modulation::words);
        return group(
                figures(DriveFigure.values()),
                List.of(Field.of("modulation", "how it makes its voltages", "space vector", choice)));
    }

    private static Shape.Group sensor() {
        Shape choice = choice(SensorKind.values(), SensorKind::words);
        return group(
                List.of(Field.of("kind", "how it works", "on-axis magnetic", choice)), figures(SensorFigure.values()));
    }

    private static Shape.Group axis() {
        return group(
                List.of(
                        Field.of(
                                "motor",
                                "its motor, declared under motors",
                                "hub",
                                new Shape.Reference("motors", "motor")),
                        Field.of(
                                "drive",
                                "its drive, declared under drives",
                                "palm",
                                new Shape.Reference("drives", "drive")),
                        Field.of(
                                "sensor",
                                "its angle sensor, declared under sensors",
                                "ring",
                                new Shape.Reference("sensors", "sensor"))),
                figures(AxisFigure.values()),
                List.of(named("duties", "duty", duty())));
    }

    private static Shape.Group duty() {
        Field profile = Field.of(
                "profile", "shape of the duty over time", "trapezoid", choice(Profile.values(), Profile::words));
        return group(List.of(profile.needed()), figures(DutyFigure.values()));
    }

    private static Shape.Group test() {
        Field kind = Field.of("test", "what sort of test it is", "spin", choice(TestKind.values(), TestKind::words));
        Field motor = Field.of("motor", "the motor on the bench", "hub", new Shape.Reference("motors", "motor"));
        Field axis = Field.of(
                "axis", "the axis whose angle sensor is tested", "left wheel", new Shape.Reference("axes", "axis"));
        return group(
                List.of(
                        kind.needed(),
                        motor.neededWith("test", kinds(k -> !k.ofAxis())),
                        axis.neededWith("test", kinds(TestKind::ofAxis)),
                        Field.of(
                                "recording",
                                "file with the recording, inside the folder of the machine",
                                "recordings/hub-spin-1.csv",
                                Shape.Words.any()),
                        Field.group("channels", "what each channel of the recording shows", channels()),
                        Field.group("readings", "readings taken by hand", new Shape.Listed("reading", reading())),
                        Field.group("instrument", "limits of the instruments, by what they show", instrument())),
                figures(TestFigure.values()),
                RecordingFields.all());
    }

    private static List<String> kinds(Predicate<TestKind> which) {
        return Arrays.stream(TestKind.values())
                .filter(which)
                .map(TestKind::words)
                .toList();
    }

    private static Shape channels() {
        return new Shape.Named(
                "channel", "channels", Shape.Words.like(Contacts.CHANNEL, "A to B, current, or shunt A to B"));
    }

    private static Shape.Group reading() {
        Field pair = Field.of(
                "pair",
                "terminals it was taken at",
                "A to B",
                Shape.Words.like(Contacts.PAIR, "A to B, A to BC, or A to star"));
        return group(List.of(pair), figures(ReadingFigure.values()));
    }

    private static Shape.Group instrument() {
        List<Field> fields = new ArrayList<>();
        for (ReadingFigure shown : ReadingFigure.values()) {
            fields.add(limits(
                    shown.key().path(), shown.key().meaning(), shown.key().dimension()));
        }
        fields.add(limits("time", "time", Dimension.TIME));
        return new Shape.Group(fields);
    }

    private static Field limits(String shown, String meaning, Dimension dimension) {
        return Field.of(
                shown,
                "limits of the instrument that shows the " + meaning,
                "± 0.1 %",
                new Shape.Limits(meaning, dimension));
    }

    private static Field named(String section, String one, Shape.Group each) {
        return Field.group(section, "every " + one + " under a name of your own", new Shape.Named(one, section, each));
    }

    static <T> Shape choice(T[] values, Function<T, String> words) {
        return new Shape.Choice(Arrays.stream(values).map(words).toList());
    }

    @SafeVarargs
    static Shape.Group group(List<Field>... parts) {
        List<Field> all = new ArrayList<>();
        for (List<Field> part : parts) {
            all.addAll(part);
        }
        return new Shape.Group(all);
    }

    /** The figures of an enumeration, those with a dot in their path gathered under their groups. */
    static List<Field> figures(Key.Named... named) {
        return nested(Arrays.stream(named).map(Key.Named::key).toList(), "");
    }

    private static List<Field> nested(List<Key> keys, String prefix) {
        Map<String, List<Key>> byFirst = new LinkedHashMap<>();
        for (Key key : keys) {
            String rest = key.path().substring(prefix.length());
            int dot = rest.indexOf('.');
            byFirst.computeIfAbsent(dot < 0 ? rest : rest.substring(0, dot + 1), k -> new ArrayList<>())
                    .add(key);
        }
        List<Field> fields = new ArrayList<>();
        byFirst.forEach((first, members) -> {
            if (first.endsWith(".")) {
                String name = first.substring(0, first.length() - 1);
                Shape.Group below = new Shape.Group(nested(members, prefix + first));
                fields.add(Field.group(name, GROUPS.getOrDefault(name, name.replace('_', ' ')), below));
            } else {
                fields.add(figure(first, members.get(0)));
            }
        });
        return fields;
    }

    private static Field figure(String name, Key key) {
        boolean interval = name.equals(TestFigure.SAMPLE_INTERVAL.key().path());
        List<String> words = interval ? List.of(RecordingFields.NO_CLOCK) : List.of();
        return Field.of(name, key.meaning(), key.example(), new Shape.Figure(key, words));
    }
}
