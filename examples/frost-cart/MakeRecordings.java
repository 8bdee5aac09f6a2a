import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Makes the recordings of the frost cart. The machine, its motors and every figure here are invented; the true values
 * stand below, so that what the bench finds can be held against them.
 *
 * <p>Run with {@code java examples/frost-cart/MakeRecordings.java [folder]}. The same program gives the same bytes. Loops and clocks
 * stand in MakeResponses.java: a program that is started from its source is one file.
 */
final class MakeRecordings {
    /** Star-equivalent motor: pole pairs, flux linkage (peak, at 20 degC), harmonics as share of the fundamental. */
    record Motor(int polePairs, double fluxWeber, double fifth, double seventh) {
        /** Voltage between two terminals at a time; {@code pair} 0 is A to B, 1 is B to C, 2 is C to A. */
        double line(double rpm, double magnetDegC, double seconds, int pair) {
            double electrical = polePairs * rpm * 2 * Math.PI / 60;
            double weak = 1 - 0.0011 * (magnetDegC - 20);
            double peak = Math.sqrt(3) * fluxWeber * weak * electrical;
            double angle = electrical * seconds + 0.7 - pair * Math.copySign(2 * Math.PI / 3, 1);
            return peak * (Math.sin(angle) + fifth * Math.sin(5 * angle) + seventh * Math.sin(7 * angle));
        }
    }

    /** True values. The lift's speed constant is 152.8 rpm/V line peak; its label says 160, which is the six-step figure. */
    static final Motor HUB = new Motor(10, 13.10e-3, 0.012, -0.006);

    static final Motor WINDER = new Motor(7, 5.155e-3, 0.004, 0.003);
    static final Motor FLAT = new Motor(11, 6.02e-3, 0.010, 0.002);

    /** Hub winding in the step test: two terminals, winding at 21 degC. */
    static final double HUB_LOOP_OHM = 0.2388;

    static final double HUB_LOOP_HENRY = 318e-6;
    static final double SHUNT_OHM = 0.1;
    static final double LEAD_OHM = 0.006;

    /** Hub rotor and its drag: J dω/dt = Kt i − Tc sgn ω − b ω, with Kt = 3/2 · 10 · 13.10 mWb. */
    static final double HUB_INERTIA = 9.62e-4;

    static final double HUB_DRY_DRAG = 0.012;
    static final double HUB_VISCOUS_DRAG = 1.5e-4;
    static final double ADDED_INERTIA = 2.0e-3;

    /** Heat in the hub: kelvin per watt from winding to housing and on to the air, joule per kelvin of both. */
    static final double HUB_WINDING_TO_HOUSING = 0.55;

    static final double HUB_HOUSING_TO_AIR = 1.50;
    static final double HUB_WINDING_CAPACITY = 65;
    static final double HUB_HOUSING_CAPACITY = 430;

    /** Amplitudes of the hub's torque over the position: 180 per turn from 18 slots and 20 magnets, 18 and 10 per turn. */
    static final double HUB_COGGING = 0.014;

    static final double HUB_SLOT_TORQUE = 0.003;
    static final double HUB_OFFSET_TORQUE = 0.002;

    /** Gains of the two oscilloscope channels used: within the ± 2 % that bench.yaml states. */
    static final double GAIN_ONE = 1.006;

    static final double GAIN_TWO = 0.996;
    static final double GAIN_THREE = 1.003;

    /** Angle sensor of the left wheel: where its zero lies, and its errors once and twice per turn, degrees. */
    static final double WHEEL_OFFSET_DEG = 41.3;

    static final double WHEEL_FIRST_DEG = 0.42;
    static final double WHEEL_SECOND_DEG = 0.18;
    static final double WHEEL_FIELD_MILLITESLA = 70.8;

    /** Friction of the free wheel as a share of what the current holds it by. */
    static final double WHEEL_FRICTION = 0.12;

    /** Zero of the three current sensors of the hub's drive, ampere, and one step of its converter. */
    static final double ZERO_A_AMP = 0.043;

    static final double ZERO_B_AMP = -0.028;
    static final double ZERO_C_AMP = 0.015;
    static final double SENSE_STEP_AMP = 40.0 / 4096;

    private final SplittableRandom random = new SplittableRandom(20260214);
    private final Path folder;

    private MakeRecordings(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        Path folder = args.length > 0 ? Path.of(args[0]) : Path.of("examples", "frost-cart", "recordings");
        Files.createDirectories(folder);
        MakeRecordings make = new MakeRecordings(folder);
        make.hubSpinOne();
        make.hubSpinTwo();
        make.hubSpinThree();
        make.hubStep();
        make.lift("lift-spin-1.csv", 612, 18);
        make.liftTab("lift-spin-2.txt", 1194, 18);
        make.pan();
        make.wheelTurn();
        make.wheelDrag();
        make.hubCoastDown("hub-coast-1.csv", 0);
        make.hubCoastDown("hub-coast-2.csv", ADDED_INERTIA);
        make.hubAcceleration();
        make.hubHold();
        make.hubZero();
        make.hubHeat();
    }

    /** Time in seconds, unit in the name; 2.04 V per step would be too coarse, so 8 bits over ± 12.8 V. */
    private void hubSpinOne() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),CH1 (V)\n");
        for (int i = 0; i < 5000; i++) {
            double t = -0.02 + i * 20e-6;
            double v = GAIN_ONE * HUB.line(411.2, 19, t, 0) + hum(t);
            text.append(f("%.6f,%.2f%n", t, eight(v, 0.1)));
        }
        write("hub-spin-1.csv", text, StandardCharsets.UTF_8);
    }

    /** Semicolons, decimal comma, milliseconds, units in a row of their own. */
    private void hubSpinTwo() throws IOException {
        StringBuilder text = new StringBuilder("Zeit;Kanal 1;Kanal 2\n(ms);(V);(V)\n\n");
        for (int i = 0; i < 4000; i++) {
            double t = i * 50e-6;
            double a = GAIN_ONE * HUB.line(204.7, 19, t, 0) + hum(t);
            double b = GAIN_TWO * HUB.line(204.7, 19, t, 1) + hum(t);
            text.append(f("%.3f;%.3f;%.3f%n", t * 1e3, eight(a, 0.05), eight(b, 0.05)).replace('.', ','));
        }
        write("hub-spin-2.csv", text, StandardCharsets.UTF_8);
    }

    /** No time column but start and increment; all three pairs. */
    private void hubSpinThree() throws IOException {
        StringBuilder text = new StringBuilder("X,CH1,CH2,CH3,Start,Increment,\n");
        text.append("Sequence,Volt,Volt,Volt,-1.000000e-02,2.000000e-05,\n");
        for (int i = 0; i < 3000; i++) {
            double t = -0.01 + i * 20e-6;
            text.append(f(
                    "%d,%.2e,%.2e,%.2e,%n",
                    i,
                    eight(GAIN_ONE * HUB.line(615.5, 20, t, 0) + hum(t), 0.2),
                    eight(GAIN_TWO * HUB.line(615.5, 20, t, 1) + hum(t), 0.2),
                    eight(GAIN_THREE * HUB.line(615.5, 20, t, 2) + hum(t), 0.2)));
        }
        write("hub-spin-3.csv", text, StandardCharsets.UTF_8);
    }

    /** A voltage step on the locked rotor through a shunt: current as shunt voltage, and the applied voltage. */
    private void hubStep() throws IOException {
        StringBuilder text = new StringBuilder("# voltage step, rotor held, shunt 0.1 ohm in series\n# Sample rate: 50000 Hz\n\n");
        text.append("Time (s),Shunt (V),Applied (V)\n");
        double loop = HUB_LOOP_OHM + SHUNT_OHM + LEAD_OHM;
        double tau = HUB_LOOP_HENRY / loop;
        for (int i = 0; i < 1500; i++) {
            double t = -0.005 + i * 20e-6;
            double on = t >= 0 ? 1 : 0;
            double amps = on * 1.0 / loop * (1 - Math.exp(-Math.max(t, 0) / tau));
            text.append(f(
                    "%.6f,%.5f,%.3f%n",
                    t, eight(GAIN_ONE * SHUNT_OHM * amps, 0.0025) + noise(0.0002), eight(GAIN_TWO * on, 0.01)));
        }
        write("hub-step.csv", text, StandardCharsets.UTF_8);
    }

    /** Headed by keys and values; one channel. */
    private void lift(String name, double rpm, double magnetDegC) throws IOException {
        StringBuilder text = new StringBuilder();
        text.append("\"Points =\",4000,\n\"Interval (s) =\",2E-5,\n\"Channel\",\"CH 1\"\n");
        text.append("\"Time (s)\",\"Voltage (V)\"\n");
        for (int i = 0; i < 4000; i++) {
            double t = i * 20e-6;
            double v = GAIN_TWO * WINDER.line(rpm, magnetDegC, t, 0) + hum(t);
            text.append(f("%.5f,%.3f%n", t, eight(v, 0.04)));
        }
        write(name, text, StandardCharsets.UTF_8);
    }

    /** UTF-16 with tabs. */
    private void liftTab(String name, double rpm, double magnetDegC) throws IOException {
        StringBuilder text = new StringBuilder("\uFEFFtime\tvoltage\ns\tV\n");
        for (int i = 0; i < 3000; i++) {
            double t = i * 20e-6;
            double v = GAIN_TWO * WINDER.line(rpm, magnetDegC, t, 1) + hum(t);
            text.append(f("%.5f\t%.3f%n", t, eight(v, 0.1)));
        }
        write(name, text, StandardCharsets.UTF_16LE);
    }

    /** Millivolts and microseconds in the names. */
    private void pan() throws IOException {
        StringBuilder text = new StringBuilder("time (us),CH1 (mV)\n");
        for (int i = 0; i < 5000; i++) {
            double t = i * 25e-6;
            double v = GAIN_ONE * FLAT.line(360.4, 20, t, 0) + hum(t);
            text.append(f("%.1f,%.0f%n", t * 1e6, 1e3 * eight(v, 0.04)));
        }
        write("pan-spin-1.csv", text, StandardCharsets.UTF_8);
    }

    /** One turn of the left wheel by hand. */
    private void wheelTurn() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),Count,Magnitude (mT)\n");
        for (int i = 0; i <= 300; i++) {
            double shaft = 360 * (i / 300.0 - 0.02 * Math.sin(2 * Math.PI * i / 150.0));
            text.append(f("%.2f,%d,%.1f%n", 0.02 * i, wheelCount(shaft), magnitude(shaft)));
        }
        write("left-wheel-turn.csv", text, StandardCharsets.UTF_8);
    }

    /** The left wheel dragged by its own field, one turn forwards and one back. */
    private void wheelDrag() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),Field (deg),Count\n");
        for (int i = 0; i <= 1440; i++) {
            int step = i <= 720 ? i : 1440 - i;
            double field = 5.0 * step;
            double lag = Math.toDegrees(Math.asin(WHEEL_FRICTION)) / HUB.polePairs();
            double shaft = field / HUB.polePairs() + (i <= 720 ? -lag : lag);
            text.append(f("%.2f,%.1f,%d%n", 0.02 * i, field, wheelCount(shaft)));
        }
        write("left-wheel-drag.csv", text, StandardCharsets.UTF_8);
    }

    /** What the sensor of 14 bits counts at an angle of the shaft in degrees. */
    private int wheelCount(double shaft) {
        double angle = Math.toRadians(shaft);
        double read = shaft + WHEEL_OFFSET_DEG + WHEEL_FIRST_DEG * Math.sin(angle + 0.8)
                + WHEEL_SECOND_DEG * Math.sin(2 * angle - 0.3) + noise(0.02);
        return Math.floorMod(Math.round(read / 360 * 16384), 16384);
    }

    private double magnitude(double shaft) {
        return WHEEL_FIELD_MILLITESLA * (1 + 0.004 * Math.cos(2 * Math.toRadians(shaft))) + noise(0.1);
    }

    /** Speed as the drive logs it, in steps of 0.1 rpm: thrown off at 560 rpm, left to itself after half a second. */
    private void hubCoastDown(String name, double added) throws IOException {
        StringBuilder text = new StringBuilder("Time (s),speed (rpm)\n");
        double inertia = HUB_INERTIA + added;
        double start = 560 * 2 * Math.PI / 60;
        double end = HUB_DRY_DRAG / HUB_VISCOUS_DRAG;
        for (int i = 0; i < 1500; i++) {
            double t = i * 8e-3;
            double fallen = (start + end) * Math.exp(-HUB_VISCOUS_DRAG * Math.max(0, t - 0.5) / inertia) - end;
            double rpm = Math.max(0, fallen) * 60 / (2 * Math.PI);
            double read = rpm == 0 ? 0 : rpm + noise(0.4);
            text.append(f("%.3f,%.1f%n", t, read));
        }
        write(name, text, StandardCharsets.UTF_8);
    }

    /** The free hub under a current of two sines, as its drive logs it. */
    private void hubAcceleration() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),q current (A),speed (rad/s)\n");
        double perAmp = 1.5 * HUB.polePairs() * HUB.fluxWeber();
        double speed = 0;
        for (int i = 0; i < 4000; i++) {
            double t = i * 2e-3;
            text.append(f("%.4f,%.3f,%.2f%n", t, 0.99 * amps(t) + noise(0.01), speed + noise(0.1)));
            for (int part = 0; part < 20; part++) {
                double torque = perAmp * amps(t + part * 1e-4)
                        - HUB_DRY_DRAG * Math.signum(speed)
                        - HUB_VISCOUS_DRAG * speed;
                speed += torque / HUB_INERTIA * 1e-4;
            }
        }
        write("hub-acceleration.csv", text, StandardCharsets.UTF_8);
    }

    /** The free hub held every 0.6 degrees, once around and back; friction carries a part of what the position asks for. */
    private void hubHold() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),angle (deg),q current (A)\n");
        double perAmp = 1.5 * HUB.polePairs() * HUB.fluxWeber();
        for (int i = 0; i < 1200; i++) {
            double at = 0.6 * (i < 600 ? i : 1199 - i);
            double angle = Math.rint(at / 360 * 16384) * 360 / 16384;
            double torque = HUB_COGGING * Math.sin(180 * Math.toRadians(at) + 1.1)
                    + HUB_SLOT_TORQUE * Math.sin(18 * Math.toRadians(at) + 0.3)
                    + HUB_OFFSET_TORQUE * Math.sin(10 * Math.toRadians(at) - 0.5)
                    + 0.7 * HUB_DRY_DRAG * (i < 600 ? 1 : -1);
            text.append(f("%.1f,%.2f,%.4f%n", 0.4 * i, angle, 0.99 * torque / perAmp + noise(0.004)));
        }
        write("hub-hold.csv", text, StandardCharsets.UTF_8);
    }

    /** The three current sensors with the bridge off, 12 bits over ± 20 A, a quarter of a second. */
    private void hubZero() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),ia (A),ib (A),ic (A)\n");
        double[] zeros = {ZERO_A_AMP, ZERO_B_AMP, ZERO_C_AMP};
        for (int i = 0; i < 256; i++) {
            text.append(f("%.3f", i * 1e-3));
            for (double zero : zeros) {
                text.append(f(",%.4f", SENSE_STEP_AMP * Math.rint((zero + noise(0.012)) / SENSE_STEP_AMP)));
            }
            text.append('\n');
        }
        write("hub-zero.csv", text, StandardCharsets.UTF_8);
    }

    /** 8 A direct current through two terminals of the cold hub for three quarters of an hour, then half an ampere to read on. */
    private void hubHeat() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),U (V),I (A),housing (degC)\n");
        double winding = 21;
        double housing = 21;
        for (int i = 0; i < 340; i++) {
            double amp = i < 270 ? 8.0 : 0.5;
            double ohm = HUB_LOOP_OHM * (235 + winding) / (235 + 20.0);
            double shown = Math.rint(10 * (housing + 0.4 + noise(0.08))) / 10;
            text.append(f("%d,%.4f,%.3f,%.1f%n", 10 * i, amp * ohm + noise(0.0006), amp + noise(0.001), shown));
            for (int part = 0; part < 100; part++) {
                double through = (winding - housing) / HUB_WINDING_TO_HOUSING;
                ohm = HUB_LOOP_OHM * (235 + winding) / (235 + 20.0);
                winding += 0.1 * (amp * amp * ohm - through) / HUB_WINDING_CAPACITY;
                housing += 0.1 * (through - (housing - 21) / HUB_HOUSING_TO_AIR) / HUB_HOUSING_CAPACITY;
            }
        }
        write("hub-heat.csv", text, StandardCharsets.UTF_8);
    }

    private static double amps(double seconds) {
        return 0.9 * Math.sin(2 * Math.PI * 0.5 * seconds) + 0.6 * Math.sin(2 * Math.PI * 1.1 * seconds + 0.4);
    }

    /** Mains hum that a long probe lead picks up, and noise. */
    private double hum(double seconds) {
        return 0.03 * Math.sin(2 * Math.PI * 50 * seconds + 1.1) + noise(0.02);
    }

    /** An eight-bit converter with the given step. */
    private static double eight(double volt, double step) {
        return Math.max(-128, Math.min(127, Math.rint(volt / step))) * step;
    }

    private double noise(double sigma) {
        double sum = 0;
        for (int k = 0; k < 12; k++) {
            sum += random.nextDouble() - 0.5;
        }
        return sigma * sum;
    }

    private static String f(String format, Object... values) {
        return String.format(Locale.ROOT, format, values).replace("\r\n", "\n");
    }

    private void write(String name, StringBuilder text, Charset charset) throws IOException {
        Files.write(folder.resolve(name), text.toString().getBytes(charset));
    }
}
