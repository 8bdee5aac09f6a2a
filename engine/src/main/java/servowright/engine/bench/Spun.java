package servowright.engine.bench;

import java.util.List;

/**
 * A reduced spin.
 *
 * @param result what the test gave
 * @param points its points on the line of back-EMF against speed
 */
record Spun(TestResult result, List<SpinPoint> points) {
    Spun {
        points = List.copyOf(points);
    }
}
