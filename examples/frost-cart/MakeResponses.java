import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * Makes the recordings of the frost cart's loops and clocks, as MakeRecordings.java makes the others. Every figure here is
 * invented; the true values stand below, so that what the bench finds can be held against them.
 *
 * <p>Run with {@code java examples/frost-cart/MakeResponses.java [folder]}. The same program gives the same bytes.
 */
final class MakeResponses {
    /** Thermistor in the hub's winding: 25 degC and beta. The readings of bench.yaml were made from these. */
    static final double THERMISTOR_OHM = 10120;

    static final double THERMISTOR_BETA = 3452;

    /** Speed loop of the lift, the mast half way up: the command comes over the bus and waits for its turn. */
    static final double LOOP_GAIN = 0.998;

    static final double LOOP_TAU = 0.038;
    static final double LOOP_DELAY = 0.011;

    /** The flat motor on a voltage: 0.92 ohm and 0.302 kg cm2, with its flux linkage. */
    static final double FLAT_OHM = 0.92;

    static final int FLAT_POLE_PAIRS = 11;
    static final double FLAT_WEBER = 6.02e-3;
    static final double FLAT_INERTIA = 0.302e-4;

    /** A step and a half of its drive's current loop at 10 kHz, until a voltage acts. */
    static final double FLAT_DELAY = 150e-6;

    /** By how much the oscilloscope began after the log of the lift's drive. */
    static final double SCOPE_LATER = 0.4127;

    private final SplittableRandom random = new SplittableRandom(-2604154321891960806L);
    private final Path folder;

    private MakeResponses(Path folder) {
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        Path folder = args.length > 0 ? Path.of(args[0]) : Path.of("examples", "frost-cart", "recordings");
        Files.createDirectories(folder);
        MakeResponses make = new MakeResponses(folder);
        make.liftSpeedLoop();
        make.flatSine("pan-sine-12.csv", 12, 40);
        make.flatSine("pan-sine-40.csv", 40, 12);
        make.flatSine("pan-sine-80.csv", 80, 6);
        make.liftKnock();
    }

    /** Steps of the speed command at odd times, and the speed that the drive logs in steps of 1 rpm. */
    private void liftSpeedLoop() throws IOException {
        StringBuilder text = new StringBuilder("Time (s),command (rpm),speed (rpm)\n");
        double[] commands = new double[700];
        double level = 300;
        int next = 20;
        for (int i = 0; i < commands.length; i++) {
            if (i == next) {
                level = 600 * (2 * random.nextDouble() - 1);
                next += 25 + (int) (30 * random.nextDouble());
            }
            commands[i] = Math.rint(level);
        }
        double speed = LOOP_GAIN * commands[0];
        for (int i = 0; i < commands.length; i++) {
            text.append(f("%.3f,%.0f,%.0f%n", 5e-3 * i, commands[i], speed + noise(3)));
            for (int part = 0; part < 50; part++) {
                double late = i + part / 50.0 - LOOP_DELAY / 5e-3;
                double heard = commands[Math.max(0, (int) Math.floor(late))];
                speed += 1e-4 / LOOP_TAU * (LOOP_GAIN * heard - speed);
            }
        }
        write("lift-speed-loop.csv", text, StandardCharsets.UTF_8);
    }

    /** A sine of q voltage about 2 V on the free flat motor; speed in steps of 0.01 rad/s. */
    private void flatSine(String name, double hertz, int perPeriod) throws IOException {
        StringBuilder text = new StringBuilder("Time (s),q voltage (V),speed (rad/s)\n");
        double emf = FLAT_POLE_PAIRS * FLAT_WEBER;
        double tau = FLAT_OHM * FLAT_INERTIA / (1.5 * emf * emf);
        double lag = Math.atan(2 * Math.PI * hertz * tau);
        double phase = lag + 2 * Math.PI * hertz * FLAT_DELAY;
        for (int i = 0; i < 240; i++) {
            double t = i / (hertz * perPeriod);
            double angle = 2 * Math.PI * hertz * t;
            double speed = (2 + 0.4 * Math.cos(lag) * Math.sin(angle - phase)) / emf;
            text.append(f("%.6f,%.3f,%.2f%n", t, 2 + 0.4 * Math.sin(angle) + noise(0.002), speed + noise(0.03)));
        }
        write(name, text, StandardCharsets.UTF_8);
    }

    /** A knock on the lift's drum, held by its drive: its log of q current, and a clamp on phase A that began later. */
    private void liftKnock() throws IOException {
        StringBuilder log = new StringBuilder("Time (s),q current (A)\n");
        for (int i = 0; i < 400; i++) {
            log.append(f("%.3f,%.3f%n", 2e-3 * i, 1.2 + knock(2e-3 * i) + noise(0.02)));
        }
        write("lift-knock-drive.csv", log, StandardCharsets.UTF_8);
        StringBuilder scope = new StringBuilder("Time (s),CH1 (A)\n");
        for (int i = 0; i < 400; i++) {
            double amp = 0.83 * (1.2 + knock(1e-3 * i + SCOPE_LATER)) + noise(0.02);
            scope.append(f("%.3f,%.2f%n", 1e-3 * i, 0.04 * Math.rint(amp / 0.04)));
        }
        write("lift-knock-scope.csv", scope, StandardCharsets.UTF_8);
    }

    /** The drive answers a knock at 0.55 s, and the drum swings a little. */
    private static double knock(double seconds) {
        double t = seconds - 0.55;
        return t < 0 ? 0 : 6 * Math.exp(-t / 0.06) * Math.sin(2 * Math.PI * 7 * t);
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
