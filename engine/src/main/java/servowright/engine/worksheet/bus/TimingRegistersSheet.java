package servowright.engine.worksheet.bus;

import java.util.List;
import java.util.Locale;
import servowright.engine.bus.BitTiming;
import servowright.engine.bus.TimingRegisters;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.known.Term;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** What two register bytes of a bit timing stand for. */
public final class TimingRegistersSheet implements Worksheet {
    private static final String SOURCE = "register bytes of nine rates in a public reprint of CiA DS-102 V2.0 (seen)";

    private static final Declaration DECLARATION = new Declaration(
            "timing-registers",
            "Bit timing in two register bytes",
            "Reads the common two-byte form of a bit timing. Propagation segment and phase segment 1 are one field there.",
            List.of(
                    Input.text("registers", "the two bytes, hexadecimal, the one with the prescaler first", "00 1C"),
                    BusInputs.clock()),
            List.of(
                    new Result("bit_rate", "bit rate", "bit/s"),
                    new Result("sample_point", "where in the bit it is sampled", "%"),
                    new Result("prescaler", "prescaler", ""),
                    new Result("before_sample", "quanta before the sample point, the first included", ""),
                    new Result("ps2", "phase segment 2, quanta", ""),
                    new Result("sjw", "jump width, quanta", ""),
                    new Result("quantum", "length of a quantum", "ns"),
                    new Result("written", "the bytes that this timing is written in", "")),
            List.of(SOURCE));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public List<Problem> contradictions(Inputs in) {
        Hexadecimal typed = Hexadecimal.of(in, "registers");
        boolean two =
                typed.readable() && (typed.digits().isEmpty() || typed.digits().length() == 4);
        return new Contradictions(DECLARATION)
                .when(!two, "registers", "two bytes are expected", "Write them like 00 1C.")
                .problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("registers", "clock").work(TimingRegistersSheet::fill);
    }

    private static void fill(Calculation c) {
        byte[] bytes = Hexadecimal.of(c.inputs(), "registers").bytes();
        Term clock = c.given("f", "clock");
        BitTiming t = TimingRegisters.decode(
                bytes[0] & 255, bytes[1] & 255, Math.round(clock.value().si()));
        Term m = c.result("prescaler", "{m} = low six bits of the first byte + 1", SOURCE, x -> t.prescaler(), clock);
        Term before = c.result(
                "before_sample",
                "{before} = low four bits of the second byte + 2",
                SOURCE,
                x -> 1.0 + t.prop() + t.ps1(),
                clock);
        Term ps2 = c.result("ps2", "{ps2} = next three bits of the second byte + 1", SOURCE, x -> t.ps2(), clock);
        c.result("sjw", "{sjw} = high two bits of the first byte + 1", SOURCE, x -> t.sjw(), clock);
        c.result("quantum", "{tq} = 2 · {m} / {f}", SOURCE, x -> t.quantumNs() * 1e-9, m, clock);
        c.result(
                "bit_rate",
                "{rate} = {f} / (2 · {m} · ({before} + {ps2}))",
                SOURCE,
                x -> t.bitsPerSecond(),
                clock,
                m,
                before,
                ps2);
        c.result("sample_point", "{SP} = {before} / ({before} + {ps2})", SOURCE, x -> t.samplePoint(), before, ps2);
        int word = TimingRegisters.encode(t);
        c.word("written", String.format(Locale.ROOT, "%02X %02X", word >> 8, word & 255));
    }
}
