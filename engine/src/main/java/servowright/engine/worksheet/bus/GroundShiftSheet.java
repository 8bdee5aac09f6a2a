package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.CommonMode;
import servowright.engine.bus.CommonMode.Range;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What a voltage between the grounds of two nodes leaves of a receiver's range. */
public final class GroundShiftSheet implements Worksheet {
    private static final String LEVELS =
            "transceiver data sheets that quote ISO 11898-2 (seen); the wide range is that of its 2016 edition (recalled)";
    private static final String WIDE = "-12 to 12 V";

    /** Common practice, no source: noise comes on top of a steady shift. */
    private static final double AIM_VOLT = 0.5;

    private static final Declaration DECLARATION = new Declaration(
            "ground-shift",
            "Voltage between the grounds of two nodes",
            "Levels of the two wires at a receiver whose ground lies off the sender's, against the range it takes. The shift"
                    + " comes from current in a shared return: read it with two probes of an oscilloscope while the motors"
                    + " accelerate and brake.",
            List.of(
                    Input.quantity("shift", Dimension.VOLTAGE, "largest voltage between the two grounds", "1.2 V")
                            .within(Quantity.of(0, "V"), Quantity.of(1000, "V")),
                    Input.choice("range", "common mode that the receiver takes", "-2 to 7 V", WIDE)
                            .orElse("-2 to 7 V")),
            List.of(
                    new Result("highest", "highest level of a wire at the receiver", "V"),
                    new Result("lowest", "lowest level of a wire at the receiver", "V"),
                    new Result("room", "distance to the nearer end of the range; below 0 beyond it", "V"),
                    new Result("most_shift", "largest shift that the receiver takes", "V"),
                    new Result("verdict", "whether the receiver takes it", "")),
            List.of(LEVELS));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("shift").work(GroundShiftSheet::fill);
    }

    private static void fill(Calculation c) {
        Range range = c.inputs().choice("range").filter(WIDE::equals).isPresent() ? Range.WIDE : Range.ORDINARY;
        Term shift = c.given("U", "shift");
        c.result(
                "highest",
                "{high} = 3.5 V + {U}",
                LEVELS,
                x -> CommonMode.of(x[0], range).highest(),
                shift);
        c.result(
                "lowest",
                "{low} = 1.5 V − {U}",
                LEVELS,
                x -> CommonMode.of(x[0], range).lowest(),
                shift);
        Term most = c.result(
                "most_shift",
                "{U most} = distance of 3.5 V and 1.5 V to the ends of the range, the smaller",
                LEVELS,
                x -> CommonMode.mostShift(range));
        Term room = c.result("room", "{room} = {U most} − {U}", LEVELS, x -> x[0] - x[1], most, shift);
        if (room.value().si() < 0) {
            c.word("verdict", "beyond the range");
            c.remark(Phrase.of("join the grounds with a wire of their own, or part them with an isolated transceiver"));
        } else {
            c.word("verdict", "within the range");
            if (shift.value().si() > AIM_VOLT) {
                c.remark(Phrase.of("spikes come on top: aim at less than 0.5 V (common practice, no source)"));
            }
        }
    }
}
