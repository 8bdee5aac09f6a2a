package servowright.engine.findings;

import static servowright.engine.prediction.Invented.candidate;
import static servowright.engine.prediction.Invented.sound;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.encoder.Alignment;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.FreeRunFit;
import servowright.engine.encoder.HandTurn;
import servowright.engine.encoder.ReferencedFit;
import servowright.engine.known.Origin;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.prediction.Invented;

/** For each rule about an angle sensor, its line and its bench tests one machine on which it fires. */
final class SensorCases {
    private SensorCases() {}

    static Map<String, Supplier<Invented>> firing() {
        Map<String, Supplier<Invented>> cases = new LinkedHashMap<>();
        // 9 motor turns per output turn at 150 rpm are 1350 rpm: 92 160 edges a second of 12 bits.
        cases.put(
                "edge-rate",
                () -> sound().sensor(SensorKind.INCREMENTAL_WITH_INDEX)
                        .sensor(SensorFigure.RESOLUTION, "12 bit")
                        .sensor(SensorFigure.LINE_EDGE_RATE, "90 kHz")
                        .arm(AxisFigure.LOAD_TORQUE, "0 N m"));
        cases.put(
                "line-clock",
                () -> sound().sensor(SensorFigure.LINE_LENGTH, "50 m").sensor(SensorFigure.LINE_CLOCK, "1 MHz"));
        cases.put("hand-turn", () -> saw(new AngleEvidence.Turned("hand turn arm 1", axial())));
        cases.put(
                "shaft-not-followed",
                () -> saw(new AngleEvidence.Aligned("alignment arm 1", new Alignment.Outcome.NotFollowed(7.4))));
        cases.put("rotor-trapped", () -> saw(new AngleEvidence.Aligned("alignment arm 1", trapped(3))));
        cases.put("friction-lag", () -> found(AxisParameter.FRICTION_LAG, 35, 1));
        cases.put(
                "travel-too-small",
                () -> saw(run("free run arm 1", new Calibration.Refused(Calibration.Reason.TRAVEL_TOO_SMALL, 670))));
        cases.put("orders-missing", () -> saw(run("free run arm 1", FreeRunFit.of(times(), coasting(), 4, 1))));
        cases.put(
                "calibration-not-repeatable",
                () -> saw(run("reference run arm 1", beside(0.3)), run("reference run arm 2", beside(0.9))));
        cases.put("angle-error", () -> found(AxisParameter.ANGLE_ERROR, 2, 0.05));
        cases.put("offsets-disagree", () -> found(AxisParameter.COMMUTATION_OFFSET, 40, 0.5, 65));
        cases.put("offset-after-reseating", () -> found(AxisParameter.RESEATING_SPREAD, 14, 1));
        return cases;
    }

    static Invented saw(AngleEvidence... evidence) {
        return sound().sensed(Map.of(), evidence);
    }

    static Invented found(AxisParameter what, double degree, double standardDegree, double... others) {
        List<Candidate> all = new ArrayList<>();
        all.add(candidate(degree, "deg", standardDegree / Math.abs(degree), Origin.MEASURED, "slow drag arm 1"));
        for (double other : others) {
            all.add(candidate(other, "deg", standardDegree / Math.abs(other), Origin.MEASURED, "alignment arm 1"));
        }
        return sound().sensed(Map.of(what, all));
    }

    static AngleEvidence.Calibrated run(String test, Calibration calibration) {
        return new AngleEvidence.Calibrated(test, calibration, false, 10);
    }

    static HandTurn axial() {
        return new HandTurn(0.01, 0.03, 0.001, 0.2, Set.of(HandTurn.Fault.STANDS_STILL, HandTurn.Fault.FIELD_SWINGS));
    }

    static Alignment.Outcome trapped(int... stops) {
        List<Integer> numbers = IntStream.of(stops).boxed().toList();
        return new Alignment.Outcome.Found(new Alignment(7, false, 0.7, 0.05, 0.01, numbers));
    }

    static double[] times() {
        return IntStream.range(0, 2000).mapToDouble(i -> 1e-3 * i).toArray();
    }

    static double[] coasting() {
        return IntStream.range(0, 2000)
                .mapToDouble(i -> 60e-3 * i - 8e-6 * i * i)
                .toArray();
    }

    /** A fit beside a reference with a first harmonic. */
    static Calibration beside(double degree) {
        double[] shaft = IntStream.range(0, 360).mapToDouble(Math::toRadians).toArray();
        double[] read = IntStream.range(0, 360)
                .mapToDouble(i -> shaft[i] + Math.toRadians(degree) * Math.sin(shaft[i]) + 1e-5 * ((7 * i) % 5 - 2))
                .toArray();
        return ReferencedFit.of(shaft, read, 4);
    }
}
