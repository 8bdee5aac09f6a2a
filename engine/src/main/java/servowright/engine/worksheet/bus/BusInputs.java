package servowright.engine.worksheet.bus;

import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.IdLength;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;

/** Inputs that several worksheets of the bus take. */
final class BusInputs {
    static final String CLASSICAL = "classical";
    static final String FD = "fd";
    private static final String LONG = "29 bit";

    private BusInputs() {}

    static Input format() {
        return Input.choice("format", "format of the frames", CLASSICAL, FD).orElse(CLASSICAL);
    }

    static Input identifier() {
        return Input.choice("identifier", "length of the identifiers", "11 bit", LONG)
                .orElse("11 bit");
    }

    static Input rate() {
        return Input.quantity("rate", Dimension.DATA_RATE, "bit rate; of FD frames the nominal one", "1 Mbit/s")
                .within(Quantity.of(1, "kbit/s"), Quantity.of(20, "Mbit/s"));
    }

    static Input dataRate() {
        return Input.quantity("data_rate", Dimension.DATA_RATE, "bit rate of the data phase of FD frames", "5 Mbit/s")
                .within(Quantity.of(1, "kbit/s"), Quantity.of(20, "Mbit/s"));
    }

    /** A stretch of bit times. */
    static Input bits(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.INFORMATION, meaning, example)
                .within(Quantity.of(0, "bit"), Quantity.of(1e6, "bit"));
    }

    /** A time that may be nothing. */
    static Input span(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TIME, meaning, example)
                .within(Quantity.of(0, "s"), Quantity.of(1e4, "s"));
    }

    /** A clock of a controller. */
    static Input clock() {
        return Input.quantity("clock", Dimension.FREQUENCY, "clock of the controller", "16 MHz")
                .within(Quantity.of(10, "kHz"), Quantity.of(1000, "MHz"));
    }

    static IdLength id(Inputs inputs) {
        return inputs.choice("identifier").filter(LONG::equals).isPresent() ? IdLength.EXTENDED : IdLength.STANDARD;
    }

    static boolean isFd(Inputs inputs) {
        return inputs.choice("format").filter(FD::equals).isPresent();
    }

    /** Refuses more bytes than a frame of the format carries, and a second rate where there is one. */
    static Contradictions frames(Contradictions so, Inputs in, String... bytes) {
        boolean fd = isFd(in);
        for (String name : bytes) {
            boolean over = in.known(name).filter(b -> b.si() > 8).isPresent();
            so.when(!fd && over, name, "a classical frame carries at most 8 bytes", "Give format=fd.");
        }
        return so.when(!fd && in.has("data_rate"), "data_rate", "classical frames have one rate", "Give format=fd.");
    }

    /** Asks for the second rate that FD frames have. */
    static Calculation withRates(Calculation c) {
        return c.needs(
                !isFd(c.inputs()) || c.inputs().has("data_rate"),
                "bit rate of the data phase",
                "give data_rate, for example 5 Mbit/s");
    }

    /** Length of the longest frame with that many bytes, ns. */
    static long longestNs(Inputs in, int bytes, long bitNs, long dataNs) {
        return isFd(in)
                ? FdFrame.most(id(in), FdFrame.codeFor(bytes), true).nanoseconds(bitNs, dataNs)
                : ClassicalFrame.mostBits(id(in), bytes) * bitNs;
    }

    static boolean yes(Inputs inputs, String name) {
        return inputs.choice(name).filter("yes"::equals).isPresent();
    }

    /** Length of a bit, ns, rounded up: a guarantee must not lose a fraction of one. */
    static long bitNs(double bitsPerSecond) {
        return (long) Math.ceil(1e9 / bitsPerSecond - 1e-6);
    }
}
