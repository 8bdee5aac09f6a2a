package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Recordings of real sensors; the values expected of them were found by other means (recomputed). */
class SensorRecordingFieldTest {
    private static final Path FIELD = Path.of(System.getProperty("servowright.root"), "..", "shared", "field");

    private static List<String> lines(String name) throws IOException {
        Path path = FIELD.resolve(name);
        assumeTrue(Files.exists(path), "the field recording " + name + " is absent");
        return Files.readAllLines(path);
    }

    @Test
    void two_channels_of_a_raw_sensor_draw_a_tilted_ellipse() throws IOException {
        List<double[]> points = lines("e02-sincos-ellipse/mag2d_raw.csv").stream()
                .skip(1)
                .filter(l -> !l.isBlank())
                .map(l -> Arrays.stream(l.split(","))
                        .mapToDouble(Double::parseDouble)
                        .toArray())
                .toList();
        assertThat(points).hasSize(139);
        EllipseFit fit = EllipseFit.of(
                        points.stream().mapToDouble(p -> p[0]).toArray(),
                        points.stream().mapToDouble(p -> p[1]).toArray())
                .orElseThrow();
        assertThat(fit.centreX()).isCloseTo(-109.7, within(0.5));
        assertThat(fit.centreY()).isCloseTo(64.5, within(0.5));
        assertThat(fit.semiMajor()).isCloseTo(103.7, within(0.5));
        assertThat(fit.semiMinor()).isCloseTo(91.5, within(0.5));
        assertThat(Math.toDegrees(fit.tiltRad())).isCloseTo(-48.6, within(1.0));
        assertThat(Math.abs(Math.toDegrees(fit.quadratureRad()))).isCloseTo(7.1, within(0.3));
    }

    /** Reference, direction and reading of the samples in motion. */
    private static double[][] moving(String name) throws IOException {
        // One block of ;-separated numbers under a header; the same time stamp may come in parts.
        TreeMap<Long, double[]> rows = new TreeMap<>();
        for (String line : lines(name)) {
            if (line.matches("\\d{18};.*")) {
                String[] cells = line.split(";");
                rows.put(Long.valueOf(cells[0]), new double[] {
                    Double.parseDouble(cells[1]), Double.parseDouble(cells[2]), Double.parseDouble(cells[3])
                });
            }
        }
        List<double[]> kept = new ArrayList<>();
        for (double[] row : rows.values()) {
            if (Math.abs(Math.abs(row[1]) - 36) < 0.5) {
                kept.add(row);
            }
        }
        double[][] columns = new double[3][];
        columns[0] = kept.stream().mapToDouble(r -> Math.signum(r[1])).toArray();
        columns[1] = kept.stream().mapToDouble(r -> Math.toRadians(r[0])).toArray();
        columns[2] = kept.stream().mapToDouble(r -> Math.toRadians(r[2])).toArray();
        return columns;
    }

    private static void assertRun(String name, double offset, double delay, double[] amplitudes) throws IOException {
        double[][] run = moving(name);
        Calibration found = DragFit.of(run[0], run[1], run[2], 1, 16);
        assertThat(found).isInstanceOf(Calibration.Fitted.class);
        Calibration.Fitted fitted = (Calibration.Fitted) found;
        assertThat(Math.toDegrees(fitted.error().meanRad())).isCloseTo(offset, within(0.03));
        OffsetAtSpeeds.Direction direction = OffsetAtSpeeds.Direction.of(
                fitted.error().meanRad() - fitted.lagRad(), fitted.error().meanRad() + fitted.lagRad());
        assertThat(1e3 * direction.asDelaySecond(Math.toRadians(36))).isCloseTo(delay, within(0.9));
        for (int order : new int[] {1, 2, 4}) {
            assertThat(fitted.error().ripples())
                    .filteredOn(r -> r.order() == order)
                    .singleElement()
                    .satisfies(r -> assertThat(Math.toDegrees(r.amplitudeRad()))
                            .isCloseTo(amplitudes[order - 1], within(0.03)));
        }
        // One speed leaves delay and play undecided.
        assertThat(OffsetAtSpeeds.delayAndPlay(new double[] {Math.toRadians(36)}, direction))
                .isEmpty();
    }

    @Test
    void turn_out_and_back_gives_offset_delay_and_harmonics() throws IOException {
        assertRun("e01-angle-error-resolver/case_b.csv", -0.66, 33.6, new double[] {0.35, 0.48, 0, 0.14});
        assertRun("e01-angle-error-resolver/case_c.csv", -0.30, 33.4, new double[] {0.26, 1.545, 0, 0.17});
    }
}
