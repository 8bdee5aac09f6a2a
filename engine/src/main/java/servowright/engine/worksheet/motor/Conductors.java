package servowright.engine.worksheet.motor;

import java.util.Arrays;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.MagnetMaterial;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;

/** Materials as inputs: what the winding and the magnets are made of. */
public final class Conductors {
    private Conductors() {}

    /** Choice of the conductor. */
    public static Input conductor() {
        return Input.choice("conductor", "what the winding is made of", words()).orElse(Conductor.COPPER_IACS.words());
    }

    /** Choice of the magnets. */
    public static Input magnetMaterial() {
        String[] words = Arrays.stream(MagnetMaterial.values())
                .map(MagnetMaterial::words)
                .toArray(String[]::new);
        return Input.choice("magnet_material", "what the magnets are made of", words)
                .orElse(MagnetMaterial.NEODYMIUM.words());
    }

    /** The conductor chosen. */
    public static Conductor conductor(Inputs inputs) {
        String word = inputs.choice("conductor").orElseThrow();
        return Arrays.stream(Conductor.values())
                .filter(k -> k.words().equals(word))
                .findFirst()
                .orElseThrow();
    }

    /** The magnets chosen. */
    public static MagnetMaterial magnetMaterial(Inputs inputs) {
        String word = inputs.choice("magnet_material").orElseThrow();
        return Arrays.stream(MagnetMaterial.values())
                .filter(m -> m.words().equals(word))
                .findFirst()
                .orElseThrow();
    }

    private static String[] words() {
        return Arrays.stream(Conductor.values()).map(Conductor::words).toArray(String[]::new);
    }
}
