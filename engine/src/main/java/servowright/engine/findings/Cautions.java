package servowright.engine.findings;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Machine;
import servowright.engine.machine.SupplyKind;

/** The cautions that stand beside every output that can lead a hand to a motor, a battery or a supply. */
public final class Cautions {
    private Cautions() {}

    /** Cautions of one machine, the most general first. */
    public static List<Caution> of(Machine machine) {
        List<Caution> found = new ArrayList<>();
        found.add(whole(
                "first-spin",
                "Motors turn, springs store, batteries burn: current-limited supply and a free shaft"
                        + " for a first spin."));
        found.add(whole("stop", "A stop in software leaves the torque on: the emergency stop takes the power away."));
        found.add(whole("stored-charge", "Capacitors stay charged after switching off: measure before touching."));
        found.add(whole("hot-winding", "Windings and drives burn skin well below their limits: let them cool."));
        if (machine.supply().filter(s -> s.kind() == SupplyKind.BATTERY).isPresent()) {
            found.add(whole("battery-fault", "A battery feeds a fault without limit: put the fuse at its pole."));
        }
        machine.axes().values().stream().filter(Cautions::falls).forEach(axis -> found.add(falling(axis)));
        found.add(whole("local-codes", "Local codes and licensed practice decide."));
        return List.copyOf(found);
    }

    private static boolean falls(Axis axis) {
        double weight =
                axis.figures().known(AxisFigure.LOAD_TORQUE).map(Known::si).orElse(0.0);
        double friction =
                axis.figures().known(AxisFigure.LOAD_FRICTION).map(Known::si).orElse(0.0);
        return Math.abs(weight) > friction;
    }

    private static Caution falling(Axis axis) {
        Phrase sentence = Phrase.of("The load of {axis} falls when its drive lets go: support it before working on it.")
                .with("axis", axis.name());
        return new Caution("falling-load", axis.name(), sentence);
    }

    private static Caution whole(String id, String sentence) {
        return new Caution(id, "", Phrase.of(sentence));
    }
}
