package servowright.engine.bench;

import java.util.LinkedHashMap;
import java.util.Map;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** The kinds of {@link Fed} that look at the angle sensor of an axis. */
final class FedOnAxis {
    private FedOnAxis() {}

    private static Fed onAxis(TestKind kind, Recording good, Map<String, String> channels, Object... truth) {
        Map<Sought, Double> all = new LinkedHashMap<>();
        for (int k = 0; k < truth.length; k += 2) {
            all.put((Sought) truth[k], (Double) truth[k + 1]);
        }
        return new Fed(
                kind,
                good,
                r -> new OnAxis()
                        .recorded(kind, r, channels)
                        .identified()
                        .tests()
                        .get(0),
                all);
    }

    private static double largestError() {
        return java.util.stream.IntStream.range(0, 3600)
                .mapToDouble(i -> Math.abs(OnAxis.TRUTH.atRad(2 * Math.PI * i / 3600)))
                .max()
                .orElseThrow();
    }

    static Fed handTurn() {
        return onAxis(
                TestKind.HAND_TURN,
                SensorReadingsTest.turned(1, 0.001),
                Map.of("pos", "angle", "mag", "field"),
                AxisParameter.TURNS_READ,
                1.0);
    }

    static Fed slowDrag() {
        return onAxis(
                TestKind.SLOW_DRAG,
                AngleBenchTest.dragged(new int[] {1, -1}, 1, 0.1),
                Map.of("cmd", "commanded angle", "pos", "angle"),
                AxisParameter.COMMUTATION_OFFSET,
                servowright.engine.encoder.Angles.wrapped(7 * 1.234),
                AxisParameter.ANGLE_ERROR,
                largestError());
    }

    static Fed freeRun() {
        return onAxis(
                TestKind.FREE_RUN,
                AngleBenchTest.coasting(60, 15, 0),
                Map.of("pos", "angle"),
                AxisParameter.ANGLE_ERROR,
                largestError());
    }

    static Fed reference() {
        return onAxis(
                TestKind.REFERENCE_RUN,
                AngleBenchTest.beside(2, 0.005, 0, true),
                AngleBenchTest.pair(),
                AxisParameter.ANGLE_ERROR,
                largestError(),
                AxisParameter.ANGLE_DELAY,
                0.005);
    }
}
