package servowright.app.input;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import servowright.app.input.form.Value.Part;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Duty;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MagnetMaterial;
import servowright.engine.machine.Modulation;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Profile;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.Supply;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.machine.SurroundingsFigure;

/** Makes the machine from the values that were found good. */
final class MachineBinder {
    private MachineBinder() {}

    /**
     * @param fallbackName what to call a machine that says no name
     */
    static Machine machine(Part file, String fallbackName) {
        return new Machine(
                file.words("machine").orElse(fallbackName),
                file.words("about").orElse(""),
                file.part("surroundings").figures(SurroundingsFigure.class),
                supply(file.part("supply")),
                parts(file, "motors", MachineBinder::motor),
                parts(file, "drives", MachineBinder::drive),
                parts(file, "sensors", MachineBinder::sensor),
                parts(file, "axes", MachineBinder::axis),
                BusBinder.bus(file.part("bus")));
    }

    private static <T> Map<String, T> parts(Part part, String section, BiFunction<String, Part, T> make) {
        Map<String, T> parts = new LinkedHashMap<>();
        part.part(section).parts().forEach((name, p) -> parts.put(name, make.apply(name, p)));
        return parts;
    }

    private static Optional<Supply> supply(Part supply) {
        for (SupplyKind kind : SupplyKind.values()) {
            Optional<Part> source =
                    supply.at(kind.words()).filter(Part.class::isInstance).map(Part.class::cast);
            if (source.isPresent()) {
                Figures<SupplyFigure> figures = source.get().figures(SupplyFigure.class);
                Figures<SupplyFigure> beside = supply.figures(SupplyFigure.class);
                for (SupplyFigure key : beside.values().keySet()) {
                    for (Declared declared : beside.all(key)) {
                        figures = figures.with(key, declared);
                    }
                }
                return Optional.of(new Supply(kind, source.get().place(), figures));
            }
        }
        return Optional.empty();
    }

    private static Motor motor(String name, Part p) {
        return new Motor(
                name,
                p.place(),
                p.figures(MotorFigure.class),
                choice(p, "magnet_material", MagnetMaterial.values(), MagnetMaterial::words));
    }

    private static Drive drive(String name, Part p) {
        return new Drive(
                name,
                p.place(),
                p.figures(DriveFigure.class),
                choice(p, "modulation", Modulation.values(), Modulation::words));
    }

    private static Sensor sensor(String name, Part p) {
        return new Sensor(
                name,
                p.place(),
                p.figures(SensorFigure.class),
                choice(p, "kind", SensorKind.values(), SensorKind::words));
    }

    private static Axis axis(String name, Part p) {
        Map<String, Duty> duties = new LinkedHashMap<>();
        p.part("duties")
                .parts()
                .forEach((key, d) -> choice(d, "profile", Profile.values(), Profile::words)
                        .ifPresent(profile ->
                                duties.put(key, new Duty(key, d.place(), profile, d.figures(DutyFigure.class)))));
        return new Axis(
                name,
                p.place(),
                p.words("motor"),
                p.words("drive"),
                p.words("sensor"),
                p.figures(AxisFigure.class),
                duties);
    }

    static <T> Optional<T> choice(Part part, String key, T[] values, Function<T, String> words) {
        return part.words(key)
                .flatMap(word -> Stream.of(values)
                        .filter(v -> words.apply(v).equals(word))
                        .findFirst());
    }
}
