package servowright.engine.worksheet.motor;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.motor.ConstantsClosure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Side;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Basis;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.UsualInputs;

/** The inputs by which a worksheet learns the constants of a motor: any subset, each on any basis. */
public final class ConstantInputs {
    private static final double SMALLEST = 1e-9;
    private static final double LARGEST = 1e9;

    private ConstantInputs() {}

    /** The constants, the pole pairs, and then what else the worksheet takes. */
    public static List<Input> and(Input... further) {
        List<Input> all = new ArrayList<>(List.of(
                constant("speed_constant", Dimension.SPEED_CONSTANT, "speed constant", "150 rpm/V [line peak]")
                        .statedAs(Basis.VOLTAGE),
                constant("emf_constant", Dimension.EMF_CONSTANT, "back-EMF constant", "6.3 V/krpm [line rms]")
                        .statedAs(Basis.VOLTAGE),
                constant("torque_constant", Dimension.TORQUE_CONSTANT, "torque constant", "0.055 N m/A [q axis]")
                        .statedAs(Basis.both(Basis.CURRENT, Basis.SIDE)),
                constant("flux_linkage", Dimension.FLUX_LINKAGE, "magnet flux linkage", "2.5 mWb [phase peak]")
                        .statedAs(Basis.VOLTAGE),
                UsualInputs.polePairs(),
                UsualInputs.magnets(),
                UsualInputs.gear()));
        all.addAll(List.of(further));
        return List.copyOf(all);
    }

    private static Input constant(String name, Dimension dimension, String meaning, String example) {
        return Input.quantity(name, dimension, meaning, example)
                .within(new Quantity(SMALLEST, dimension), new Quantity(LARGEST, dimension))
                .repeatable();
    }

    /** What cannot be true together among these inputs. */
    public static Contradictions check(Contradictions found, Inputs inputs) {
        int figures = inputs.all("speed_constant").size()
                + inputs.all("emf_constant").size()
                + inputs.all("torque_constant").size()
                + inputs.all("flux_linkage").size();
        boolean load = inputs.all("torque_constant").stream()
                .anyMatch(v -> v.stated()
                        .flatMap(Stated::side)
                        .filter(Side.LOAD::equals)
                        .isPresent());
        return found.when(
                        figures > ConstantsClosure.MOST_FIGURES,
                        "speed_constant",
                        figures + " constants are more than " + ConstantsClosure.MOST_FIGURES,
                        "Leave some out.")
                .when(
                        GivenPoles.odd(inputs),
                        "magnets",
                        "an odd number of magnets is a miscount: north and south alternate",
                        "Count again.")
                .when(
                        load && !inputs.has("gear"),
                        "torque_constant",
                        "on the load side it needs the gear",
                        "Give gear, for example 9.");
    }
}
