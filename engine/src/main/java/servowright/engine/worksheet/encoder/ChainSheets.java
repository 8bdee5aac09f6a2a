package servowright.engine.worksheet.encoder;

import static servowright.engine.worksheet.encoder.EncoderInputs.whole;

import java.util.List;
import java.util.Optional;
import servowright.engine.encoder.HallTriple;
import servowright.engine.encoder.Latency;
import servowright.engine.encoder.QuadratureLine;
import servowright.engine.encoder.Resolution;
import servowright.engine.encoder.SerialLine;
import servowright.engine.encoder.TrackingObserver;
import servowright.engine.known.Known;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.UsualInputs;
import servowright.engine.worksheet.Worksheet;

/** From the angle at the sensor to the number in the loop. */
final class ChainSheets {
    /** Natural frequency over sample rate, and ω_n T, up to which the noise of the observer is known. */
    private static final double MOST_SAMPLES_SHARE = 0.02;

    private static final double MOST_SHARE = 0.13;

    private static final String STEPS = "rounding spread evenly over a step (derived)";
    private static final String LOOP = "linear loop of second order under white noise (derived)";
    private static final String DELAY = "motion during the delay (derived)";
    private static final String EDGES = "four edges per period of two channels a quarter apart";
    private static final String TRIP =
            "5 ns per metre each way within half a clock; published tables stay 8 to 36 % below";
    private static final String STATES = "sixths of an electrical turn (derived)";

    private static final Worksheet RESOLUTION_SHEET = LineSheet.of(
            "angle-resolution",
            "Steps of a digital angle",
            "Step and rounding of an angle, the speed steps that differences of it make, the error of cutting the counts of"
                    + " an electrical turn to a whole number, and how long single precision lasts.",
            List.of(
                    counts("counts", "readings per turn, two to the power of the bits", "16384"),
                    EncoderInputs.time("sample_time", "time between two readings", "1 ms"),
                    EncoderInputs.polePairs(),
                    EncoderInputs.angle("noise", "noise of one reading, RMS", "0.05 deg", 30)),
            List.of(
                    new Result("step", "one count", "deg"),
                    new Result("rounding", "RMS of the rounding", "deg"),
                    new Result("speed_step", "smallest speed a difference shows", "rad/s"),
                    new Result("speed_noise", "RMS of a speed by differences of noisy readings", "rad/s"),
                    new Result("truncation", "electrical error of whole counts per electrical turn", "deg"),
                    new Result("truncation_counts", "the same in counts, at the end of a turn", ""),
                    new Result("turns_in_float", "turns until single precision steps wider", "")),
            List.of(
                    Line.of("step", "{q} = 2π/{N}", STEPS, x -> new Resolution(x[0]).stepRad(), "N=counts"),
                    Line.of(
                            "rounding",
                            "{σ} = 2π/({N} · √12)",
                            STEPS,
                            x -> new Resolution(x[0]).roundingRad(),
                            "N=counts"),
                    Line.of(
                            "speed_step",
                            "{ω} = 2π/({N} · {T})",
                            STEPS,
                            x -> new Resolution(x[0]).speedStep(x[1]),
                            "N=counts",
                            "T=sample_time"),
                    Line.of(
                            "speed_noise",
                            "{σω} = {σ} · √2 / {T}",
                            "difference of two independent readings",
                            x -> Resolution.differenced(x[0], x[1]),
                            "σ=noise",
                            "T=sample_time"),
                    Line.of(
                            "truncation",
                            "{ε} = frac({N}/{p}) · ({p} − 1) · 2π · {p}/{N}",
                            "counts lost in every electrical turn but the last (derived)",
                            x -> new Resolution(x[0]).truncationElectricalRad(whole(x[1])),
                            "N=counts",
                            "p=pole_pairs"),
                    Line.of(
                            "truncation_counts",
                            "{e} = frac({N}/{p}) · ({p} − 1)",
                            "counts lost in every electrical turn but the last (derived)",
                            x -> new Resolution(x[0]).truncationCounts(whole(x[1])),
                            "N=counts",
                            "p=pole_pairs"),
                    Line.of(
                            "turns_in_float",
                            "{n}: spacing of numbers of 24 bits above 2π/{N}",
                            "IEEE 754 binary32",
                            x -> new Resolution(x[0]).turnsInFloat(24),
                            "N=counts")));

    private static final String[] OBSERVER_NOISY = {"fn=natural_frequency", "ζ=damping", "σ=noise", "T=sample_time"};

    private static final Worksheet OBSERVER_SHEET = LineSheet.of(
                    "tracking-observer",
                    "Speed from a loop that follows the angle",
                    "Noise, bandwidth and lag of a second-order loop that follows the angle. For a natural frequency up to a fiftieth"
                            + " of the sample rate.",
                    List.of(
                            EncoderInputs.frequency("natural_frequency", "natural frequency of the loop", "100 Hz"),
                            Input.quantity("damping", Dimension.NUMBER, "damping of the loop", "1")
                                    .within(Quantity.number(0.1), Quantity.number(10))
                                    .orElse("1"),
                            EncoderInputs.angle("noise", "noise of one reading, RMS", "0.05 deg", 30),
                            EncoderInputs.time("sample_time", "time between two readings", "100 us"),
                            Input.quantity(
                                            "acceleration",
                                            Dimension.ACCELERATION,
                                            "acceleration of the shaft",
                                            "1000 rad/s2")
                                    .within(Quantity.of(0, "rad/s2"), Quantity.of(1e7, "rad/s2"))),
                    List.of(
                            new Result("speed_noise", "RMS of the speed", "rad/s"),
                            new Result("speed_delay", "delay of the speed", "ms"),
                            new Result("angle_lag", "lag of the angle under the acceleration", "deg"),
                            new Result("speed_bandwidth", "frequency at which the speed is 3 dB down", "Hz")),
                    List.of(
                            Line.of(
                                    "speed_noise",
                                    "{σω} = {σ} · √({T} · (2π · {fn})³/(4 · {ζ}))",
                                    LOOP,
                                    x -> loop(x).speedNoise(x[2], Math.min(x[3], MOST_SHARE / (2 * Math.PI * x[0]))),
                                    OBSERVER_NOISY),
                            Line.of(
                                    "speed_delay",
                                    "{t} = 2 · {ζ}/(2π · {fn})",
                                    LOOP,
                                    x -> loop(x).speedDelaySecond(),
                                    "fn=natural_frequency",
                                    "ζ=damping"),
                            Line.of(
                                    "angle_lag",
                                    "{δ} = {α}/(2π · {fn})²",
                                    LOOP,
                                    x -> new TrackingObserver(2 * Math.PI * x[0], 1).angleLagRad(x[1]),
                                    "fn=natural_frequency",
                                    "α=acceleration"),
                            Line.of(
                                    "speed_bandwidth",
                                    "{f} = {fn} · √(a + √(a² + 1)), a = 1 − 2 · {ζ}²",
                                    LOOP,
                                    x -> loop(x).speedBandwidth() / (2 * Math.PI),
                                    "fn=natural_frequency",
                                    "ζ=damping")))
            .within(new LineSheet.Limit(
                    ChainSheets::tooFast,
                    "natural_frequency",
                    "above a fiftieth of the sample rate the formula for the noise no longer holds",
                    "Give a lower frequency or a shorter sample time."));

    private static final String[] LATENCY_INPUTS = {"p=pole_pairs", "ω=speed", "τ=delay"};

    private static final Worksheet LATENCY_SHEET = LineSheet.of(
            "angle-latency",
            "Angle lost to delay",
            "Electrical angle by which the rotor has gone on while its angle was converted, filtered, sent and used, and"
                    + " what that leaves of the torque if nothing makes up for it.",
            List.of(
                    EncoderInputs.polePairs(),
                    UsualInputs.speed("speed", "speed of the motor"),
                    EncoderInputs.time("delay", "from the angle to the middle of the voltage that uses it", "100 us"),
                    EncoderInputs.frequency("filter", "corner of a filter of one pole", "1 kHz"),
                    EncoderInputs.angle("budget", "electrical angle that may be lost", "10 deg", 90)),
            List.of(
                    new Result("lost", "electrical angle lost", "deg"),
                    new Result("torque_left", "share of the torque left", "%"),
                    new Result("flux_current", "share of the current in the flux axis", "%"),
                    new Result("filter_delay", "delay of the filter", "us"),
                    new Result("delay_allowed", "delay within the angle that may be lost", "us")),
            List.of(
                    Line.of(
                            "lost",
                            "{ε} = {p} · {ω} · {τ}",
                            DELAY,
                            x -> new Latency(x[2]).electricalRad(whole(x[0]), x[1]),
                            LATENCY_INPUTS),
                    Line.of(
                            "torque_left",
                            "{k} = cos({p} · {ω} · {τ})",
                            DELAY,
                            x -> Math.cos(x[0] * x[1] * x[2]),
                            LATENCY_INPUTS),
                    Line.of(
                            "flux_current",
                            "{k} = sin({p} · {ω} · {τ})",
                            DELAY,
                            x -> Math.sin(x[0] * x[1] * x[2]),
                            LATENCY_INPUTS),
                    Line.of(
                            "filter_delay",
                            "{t} = 1/(2π · {fc})",
                            "low-pass of one pole at low frequency",
                            x -> Latency.ofFilter(2 * Math.PI * x[0]).second(),
                            "fc=filter"),
                    Line.of(
                            "delay_allowed",
                            "{τ} = {ε}/({p} · {ω})",
                            DELAY,
                            x -> x[0] / Math.max(1e-9, whole(x[1]) * x[2]),
                            "ε=budget",
                            "p=pole_pairs",
                            "ω=speed")));

    private static final Worksheet EDGES_SHEET = LineSheet.of(
            "quadrature-edges",
            "Edges of an incremental encoder",
            "How fast edges come and how close two may lie when their phase is off. A filter that needs a level for more than"
                    + " half of the least separation loses counts.",
            List.of(
                    Input.count(
                            "periods", "periods per turn of each channel, a quarter of the counts", 1, 1000000, "1024"),
                    UsualInputs.speed("speed", "speed of the encoder"),
                    EncoderInputs.angle("phase_error", "edge off its place, in a period of 360°", "45 deg", 90)
                            .orElse("0 deg")),
            List.of(
                    new Result("edges", "edges of both channels together", "kHz"),
                    new Result("separation", "least time between two edges", "us")),
            List.of(
                    Line.of(
                            "edges",
                            "{f} = 4 · {N} · {ω}/2π",
                            EDGES,
                            x -> 4 * x[0] * x[1] / (2 * Math.PI),
                            "N=periods",
                            "ω=speed"),
                    Line.of(
                            "separation",
                            "{t} = (π/2 − {x})/({N} · {ω})",
                            EDGES,
                            x -> new QuadratureLine(whole(x[0]))
                                    .leastSeparationSecond(Math.max(1e-6, x[1]), Math.max(0, x[2])),
                            "N=periods",
                            "ω=speed",
                            "x=phase_error")));

    private static final Worksheet SWITCHES_SHEET = LineSheet.of(
            "hall-placement",
            "Misplaced Hall switches",
            "Error of a speed from the time of one state when switches sit off their places, and the ripple of two analogue"
                    + " switches that are not a quarter period apart.",
            List.of(
                    EncoderInputs.polePairs(),
                    EncoderInputs.angle("placement", "mechanical error of a switch", "1 deg", 20),
                    EncoderInputs.angle("quadrature", "electrical error between two analogue switches", "8 deg", 45)),
            List.of(
                    new Result("speed_error", "error of a speed from one state", "%"),
                    new Result("angle_mean", "electrical mean of the error of the analogue switches", "deg"),
                    new Result("angle_ripple", "electrical ripple, twice per electrical turn", "deg")),
            List.of(
                    Line.of(
                            "speed_error",
                            "{k} = {p} · {d}/(π/3)",
                            STATES,
                            x -> HallTriple.speedErrorShare(whole(x[0]), Math.max(0, x[1])),
                            "p=pole_pairs",
                            "d=placement"),
                    Line.of(
                            "angle_mean",
                            "{m} = {δ}/2, error δ/2 · (1 − cos 2α)",
                            "arctangent of two sines off quadrature, first order (derived)",
                            x -> HallTriple.quadratureRippleElectricalRad(x[0]),
                            "δ=quadrature"),
                    Line.of(
                            "angle_ripple",
                            "{A} = {δ}/2, error δ/2 · (1 − cos 2α)",
                            "arctangent of two sines off quadrature, first order (derived)",
                            x -> HallTriple.quadratureRippleElectricalRad(x[0]),
                            "δ=quadrature")));

    private static final Worksheet WIRE_SHEET = LineSheet.of(
            "angle-line",
            "Time of an angle on the wire",
            "Fastest clock of a serial line of given length whose data are taken half a clock later, and the time of one"
                    + " frame.",
            List.of(
                    EncoderInputs.length("cable", "length of the line", "100 m", 0, 2e6),
                    EncoderInputs.time("drivers", "delay of drivers and sensor", "0.3 us"),
                    Input.count("bits", "bits of one frame", 1, 64, "16"),
                    EncoderInputs.frequency("clock", "clock of the line", "1 MHz"),
                    EncoderInputs.time("pause", "pause between frames", "20 us")),
            List.of(
                    new Result("fastest_clock", "fastest clock", "kHz"),
                    new Result("frame_time", "one frame and its pause", "us")),
            List.of(
                    Line.of(
                            "fastest_clock",
                            "{f} = 1/(2 · (2 · {L} · 5 ns/m + {t}))",
                            TRIP,
                            x -> SerialLine.fastestClockHertz(Math.max(0, x[0]), x[1]),
                            "L=cable",
                            "t=drivers"),
                    Line.of(
                            "frame_time",
                            "{T} = ({n} + 1)/{f} + {tp}",
                            "synchronous serial frame: one clock more than bits (seen)",
                            x -> SerialLine.synchronousFrameSecond(whole(x[0]), x[1], x[2]),
                            "n=bits",
                            "f=clock",
                            "tp=pause")));

    private ChainSheets() {}

    static List<Worksheet> all() {
        return List.of(RESOLUTION_SHEET, OBSERVER_SHEET, LATENCY_SHEET, EDGES_SHEET, SWITCHES_SHEET, WIRE_SHEET);
    }

    private static Input counts(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.NUMBER, meaning, example)
                .within(Quantity.number(1), Quantity.number(1L << 40));
    }

    private static boolean tooFast(Inputs inputs) {
        Optional<Known> hertz = inputs.known("natural_frequency");
        Optional<Known> second = inputs.known("sample_time");
        return inputs.has("noise")
                && hertz.isPresent()
                && second.isPresent()
                && hertz.get().si() * second.get().si() > MOST_SAMPLES_SHARE;
    }

    private static TrackingObserver loop(double[] x) {
        return new TrackingObserver(2 * Math.PI * x[0], x[1]);
    }
}
