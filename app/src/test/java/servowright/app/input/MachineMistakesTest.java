package servowright.app.input;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.MotorFigure;

class MachineMistakesTest {
    @TempDir
    private Path dir;

    private Folder machine(String text) {
        return Folder.in(dir).with("machine.yaml", text);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "resistance: 0.24|0.24 has no unit. Did you mean 0.24 ohm?",
                "resistance: 24 V|24 V: the unit does not fit winding resistance."
                        + " Write it like 0.24 ohm [two terminals, 20 degC, label].",
                "speed_constant: 12 V/krpm|12 V/krpm: the unit does not fit speed per volt. Did you mean the key emf_constant?",
                "resistance: 24 ohms|\"24 ohms\": the unit \"ohms\" is not known. Did you mean 24 ohm?",
                "rated_current: 6 amps|\"6 amps\": the unit \"amps\" is not known. Did you mean 6 A?",
                "inductance: 0.31 mh|\"0.31 mh\": the unit \"mh\" is not known. Did you mean 0.31 mH?",
                "speed_constant: 42 KV|\"42 KV\": the unit \"KV\" is not known. Did you mean 42 rpm/V?",
                "winding_limit: 110 C|110 C: the unit does not fit winding temperature not to exceed. Did you mean 110 degC?",
                "rotor_inertia: 9.5 kg/cm2|9.5 kg/cm2: the unit does not fit moment of inertia of the rotor."
                        + " Did you mean 9.5 kg cm2?",
                "resistance: about 1 ohm|\"about 1 ohm\": no number at its start. Write a number and a unit, for example 24 V.",
                "resistance: 1,200 ohm|\"1,200 ohm\": a comma before three digits can mean a thousand or a decimal."
                        + " Write 1200 or 1.200.",
                "rotor_inertia: 9.5e5 kg m2|9.5e5 kg m2 is far outside 1 mg cm2 to 1e7 kg cm2. Did you mean 9.5e5 kg cm2?",
                "inductance: 310 H|310 H is far outside 100 nH to 10 H. Did you mean 310 mH?",
                "magnets: 21|21 magnets cannot be: poles come in pairs. Count them again.",
                "magnets: 20.5|20.5 is no whole number. Count again: magnet poles counted on the rotor; half of them are the"
                        + " pole pairs.",
                "magnets: 20 ± 1|20 ± 1 is no whole number. Count again: magnet poles counted on the rotor; half of them are"
                        + " the pole pairs.",
                "magnets: 4000|4000 is outside 2 to 400. Write it like 20.",
                "magnets: [20, 22]|one value is allowed here, not a list of 2. Write one value, like 20.",
                "resistance: {a: 1}|one value is asked here, not keys. Write one value, like"
                        + " 0.24 ohm [two terminals, 20 degC, label].",
                "resistance: 0.2..0.3 ohm|one value is asked, 0.2..0.3 ohm is a range."
                        + " Give one value, with its tolerance if it has one, like 0.25 ohm ± 5 %.",
                "resistance: 1 ohm [two terminal]|[two terminal] is not known in square brackets. Nearest: two terminals.",
                "resistance: 1 ohm [line peak]|[line peak] says nothing about winding resistance."
                        + " Known here: two terminals, one against two, phase, label, data sheet, measured, guess, a temperature.",
                "resistance: 1 ohm [phase, two terminals]|[phase] and [two terminals] cannot both hold. Keep one of them.",
                "resistance: 1 ohm [label, guess]|[label] and [guess] cannot both hold. Keep one of them.",
                "resistance: 1 ohm [2000 degC]|the temperature in square brackets is far outside -100 degC to 500 degC."
                        + " Check the unit.",
                "rated_current: 6 A [supply]|[supply] says nothing about current it may carry for good."
                        + " A supply current is no motor current: give the motor current, [q axis] or [phase rms].",
                "rated_current: 6 A [phase peak]|[phase peak] says nothing about current it may carry for good."
                        + " The peak of the phase current is the current on the q axis: write [q axis].",
                "magnet_material: neodym|\"neodym\" is not known here. Known: neodymium, samarium cobalt, ferrite.",
            })
    void says_what_is_wrong_with_a_figure(String line, String problem) {
        String place = "line 3, motors / hub / " + line.substring(0, line.indexOf(':')) + ": ";
        assertThat(machine("motors:\n  hub:\n    " + line + "\n").lines()).containsExactly(place + problem);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "{gear: {efficiency: 85}}|85 is far outside 0.05 to 1. Did you mean 85 %?",
                "{mount: {gap: 1.4 m}}|1.4 m is far outside 0.1 mm to 10 mm. Did you mean 1.4 mm?",
                "{mount: {gap: 12 mm}}|12 mm is outside 0.1 mm to 10 mm. Write it like 1.9 mm ± 0.2 mm.",
                "{mount: {gap: 0.05 mm}}|0.05 mm is outside 0.1 mm to 10 mm. Write it like 1.9 mm ± 0.2 mm.",
            })
    void says_what_is_wrong_with_a_figure_of_an_axis(String axis, String problem) {
        assertThat(machine("axes:\n  tilt: " + axis + "\n").lines())
                .singleElement()
                .asString()
                .endsWith(": " + problem);
    }

    @Test
    void names_what_contradicts_itself() {
        assertThat(machine("""
                        surroundings: {coldest: 30 degC, warmest: -12 degC}
                        supply:
                          battery: {voltage: 20..29 V}
                          mains: {voltage: 24 V}
                        motors:
                          hub: {rated_current: 9 A [q axis], peak_current: 6 A [q axis]}
                          rms: {rated_current: 9 A [q axis], peak_current: 8 A [phase rms]}
                        drives:
                          palm:
                            voltage: 12..34 V
                            trip_voltage: 30 V
                            current:
                              continuous: 12 A [q axis]
                              peak: 6 A [q axis]
                        """).lines())
                .containsExactly(
                        "line 1, surroundings / warmest: -12 degC is below the 30 degC of coldest in line 1."
                                + " Check both figures.",
                        "line 4, supply / mains: a supply is a battery or a mains supply, not both."
                                + " Keep the one that feeds the axes.",
                        "line 6, motors / hub / peak_current: 6 A is below the 9 A of rated_current in line 6."
                                + " Check both figures.",
                        "line 11, drives / palm / trip_voltage: 30 V is below the 12..34 V of voltage in line 10."
                                + " Check both figures.",
                        "line 14, drives / palm / current / peak: 6 A is below the 12 A of current / continuous in line 13."
                                + " Check both figures.");
    }

    @Test
    void leads_a_key_to_where_it_belongs() {
        assertThat(machine("""
                        motor: {hub: {slots: 12}}
                        supply:
                          battery: {fuse: 30 A}
                          takes_back: 5 A
                        axes:
                          tilt:
                            motor: hub
                            gap: 1.9 mm
                            gap:1.9 mm
                            motor_turns: 5
                        """.replace("    gap:1.9 mm\n", "    {gap:1.9 mm}: 3\n")
                                .replace("{gap:1.9 mm}", "gap:1.9 mm"))
                        .lines())
                .containsExactly(
                        "line 1, motor: this key is not known. Nearest: motors.",
                        "line 3, supply / battery / fuse: this key is not known. Put it one level up.",
                        "line 4, supply / takes_back: this key is not known. Put it under battery.",
                        "line 8, axes / tilt / gap: this key is not known. Put it under mount.",
                        "line 9, axes / tilt / gap:1.9 mm: this key is not known."
                                + " Write key: value, with a blank behind the colon.",
                        "line 10, axes / tilt / motor_turns: this key is not known. Put it under gear.");
    }

    @Test
    void says_what_shape_is_asked() {
        assertThat(machine("""
                        motors: [hub, winder]
                        drives: palm
                        axes:
                          left/right: {motor: hub}
                          tilt:
                            mount: 3 mm
                            duties:
                              nod: {travel: 90 deg}
                        """).lines())
                .containsExactly(
                        "line 1, motors: motors under names of your own are asked here, a list is none."
                                + " Write key: value below it, with a blank behind each colon.",
                        "line 2, drives: drives under names of your own are asked here, \"palm\" is none."
                                + " Write key: value below it, with a blank behind each colon.",
                        "line 4, axes / left/right: \"left/right\" cannot be a name here."
                                + " Use a few letters, digits, blanks or hyphens.",
                        "line 6, axes / tilt / mount: keys are asked here, \"3 mm\" is none."
                                + " Write key: value below it, with a blank behind each colon.",
                        "line 8, axes / tilt / duties / nod: the key profile is missing: shape of the duty over time."
                                + " Add a line like profile: trapezoid.");
    }

    @ParameterizedTest
    @ValueSource(strings = {"unknown", "", "~"})
    void takes_unknown_as_absent(String unknown) {
        var machine = machine("motors:\n  hub:\n    slots: " + unknown + "\n    magnets: 20\n    magnet_material: "
                        + unknown + "\naxes:\n  tilt: " + unknown + "\n")
                .loaded()
                .machine();
        assertThat(machine.motors().get("hub")).satisfies(hub -> {
            assertThat(hub.figures().values()).containsOnlyKeys(MotorFigure.MAGNETS);
            assertThat(hub.magnetMaterial()).isEmpty();
        });
        assertThat(machine.axes()).containsOnlyKeys("tilt");
    }

    @Test
    void takes_a_decimal_comma_and_several_values() {
        var machine = machine("""
                        motors:
                          hub: {resistance: [0,24 ohm [two terminals], 0,12 ohm [phase]]}
                        axes:
                          tilt: {mount: {gap: 1,9 mm ± 0,2 mm}}
                        """).loaded().machine();
        assertThat(machine.motors().get("hub"))
                .satisfies(hub -> assertThat(hub.figures().all(MotorFigure.RESISTANCE))
                        .extracting(d -> d.si())
                        .containsExactly(0.24, 0.12));
        assertThat(machine.axes().get("tilt"))
                .satisfies(tilt -> assertThat(tilt.figures()
                                .get(AxisFigure.GAP)
                                .orElseThrow()
                                .stated()
                                .upper()
                                .in("mm"))
                        .isCloseTo(2.1, org.assertj.core.api.Assertions.within(1e-9)));
    }

    @Test
    void a_machine_without_a_name_is_called_like_its_folder() {
        assertThat(machine("motors: {hub: {slots: 18}}").loaded().machine().name())
                .isEqualTo(dir.getFileName().toString());
    }
}
