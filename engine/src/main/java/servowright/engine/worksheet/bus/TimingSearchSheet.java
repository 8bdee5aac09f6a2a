package servowright.engine.worksheet.bus;

import java.util.List;
import servowright.engine.bus.BitTiming;
import servowright.engine.bus.TimingSearch;
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

/** The best bit timing that a classical controller can set for a rate. */
public final class TimingSearchSheet implements Worksheet {
    private static final String RANGE = "smallest range a classical controller must offer, ISO 11898-1 (recalled)";
    private static final String POINT = "sample points that CiA recommends, as a public kernel's source says (seen)";

    private static final Declaration DECLARATION = new Declaration(
            "timing-search",
            "Bit timing for a rate",
            "Of all settings of a classical controller within 0.5 % of the rate the one nearest to the sample point, and of"
                    + " those the one whose clocks may deviate most.",
            List.of(
                    BusInputs.clock(),
                    BusInputs.rate(),
                    Input.quantity(
                                    "sample_point",
                                    Dimension.NUMBER,
                                    "where to sample; without it as recommended",
                                    "87.5 %")
                            .within(Quantity.number(0.3), Quantity.number(0.95)),
                    BusInputs.span("prop_time", "time the propagation segment must cover", "600 ns")
                            .orElse("0 s")),
            List.of(
                    new Result("settings", "settings that there are", ""),
                    new Result("prescaler", "prescaler", ""),
                    new Result("prop", "propagation segment, quanta", ""),
                    new Result("ps1", "phase segment 1, quanta", ""),
                    new Result("ps2", "phase segment 2, quanta", ""),
                    new Result("sjw", "jump width, quanta", ""),
                    new Result("bit_rate", "bit rate achieved", "bit/s"),
                    new Result("sample_found", "sample point achieved", "%"),
                    new Result("clock_tolerance", "what each clock may deviate", "%")),
            List.of(RANGE, POINT));

    @Override
    public Declaration declaration() {
        return DECLARATION;
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        return Calculation.of(DECLARATION, inputs).needs("clock", "rate").work(TimingSearchSheet::fill);
    }

    private static void fill(Calculation c) {
        Term clock = c.given("f", "clock");
        Term rate = c.given("rate", "rate");
        double perSecond = rate.value().si();
        Term point = c.term("SP", "sample_point")
                .orElseGet(() -> c.step(
                        "sample point recommended",
                        "{SP} = 75 % above 800 kbit/s, 80 % above 500 kbit/s, else 87.5 %, {rate}",
                        "%",
                        POINT,
                        x -> TimingSearch.recommendedSamplePoint(x[0]),
                        rate));
        Term prop = c.given("t prop", "prop_time");
        List<BitTiming> found = TimingSearch.all(
                Math.round(clock.value().si()),
                perSecond,
                TimingSearch.Limits.CLASSICAL,
                prop.value().si() * 1e9,
                point.value().si());
        c.result("settings", "{n} = settings for {rate} from {f}", RANGE, x -> found.size(), rate, clock);
        if (found.isEmpty()) {
            c.remark(Phrase.of("no setting gives this rate within 0.5 %: another clock is needed"));
            return;
        }
        best(c, found.get(0), clock, point, prop);
    }

    private static void best(Calculation c, BitTiming best, Term clock, Term point, Term prop) {
        Term m = c.result("prescaler", "{m} = of the setting nearest to {SP}", RANGE, x -> best.prescaler(), point);
        Term p = c.result("prop", "{prop} = at least {t prop} long", RANGE, x -> best.prop(), prop);
        Term one = c.result("ps1", "{ps1} = of the same setting", RANGE, x -> best.ps1(), point);
        Term two = c.result("ps2", "{ps2} = of the same setting", RANGE, x -> best.ps2(), point);
        c.result("sjw", "{sjw} = as wide as {ps1} and {ps2} allow, at most 4", RANGE, x -> best.sjw(), one, two);
        c.result(
                "bit_rate",
                "{rate found} = {f} / ({m} (1 + {prop} + {ps1} + {ps2}))",
                RANGE,
                x -> best.bitsPerSecond(),
                clock,
                m,
                p,
                one,
                two);
        c.result(
                "sample_found",
                "{SP found} = (1 + {prop} + {ps1}) / (1 + {prop} + {ps1} + {ps2})",
                RANGE,
                x -> best.samplePoint(),
                p,
                one,
                two);
        c.result(
                "clock_tolerance",
                "{df} = smaller of both conditions of bit-timing, {m}",
                "Hartwich and Bassemir, 6th iCC (seen as quoted)",
                x -> best.clockTolerance(),
                m);
    }
}
