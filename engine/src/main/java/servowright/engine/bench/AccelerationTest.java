package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.recording.Recording;

/**
 * Acceleration: a changing motor current drives a free shaft, and current and speed are recorded. With the torque constant
 * known the inertia follows, with the inertia known the torque constant. The supply's current is refused: behind a bridge
 * it is not the motor's.
 */
final class AccelerationTest {
    private AccelerationTest() {}

    /** Whether the test states the inertia of all that turned, and so gives the torque constant. */
    static boolean givesTorqueConstant(BenchTest test) {
        return test.figures().get(TestFigure.INERTIA).isPresent();
    }

    /**
     * Reduces the run.
     *
     * @param polePairs      for the flux linkage, when the inertia is stated
     * @param torqueConstant per q-axis ampere, for the inertia, when it is not
     */
    static TestResult of(
            BenchTest test,
            Motor motor,
            Optional<Recording> recording,
            Optional<Known> polePairs,
            Optional<Known> torqueConstant) {
        ResultSheet sheet = new ResultSheet(test);
        boolean constant = givesTorqueConstant(test);
        MotorParameter main = constant ? MotorParameter.FLUX_LINKAGE : MotorParameter.ROTOR_INERTIA;
        if (recording.isEmpty()) {
            return sheet.refused(
                    main, "a recording of " + test.id(), "record current and speed while the shaft accelerates");
        }
        Outcome<Driven> driven = Driven.of(test, recording.get(), sheet);
        if (driven instanceof Missing<Driven> why) {
            sheet.missing(main, why);
            return sheet.end();
        }
        Driven found = driven.found().orElseThrow();
        DrivenValues values = new DrivenValues(test, found.run(), found.basis(), sheet);
        if (constant) {
            flux(test, motor, polePairs, values, sheet);
        } else if (torqueConstant.isPresent()) {
            values.byTorqueConstant(torqueConstant.get());
        } else {
            sheet.missing(
                    main,
                    "torque constant, or the inertia of all that turned in " + test.id(),
                    "state inertia with the test");
        }
        return sheet.end();
    }

    private static void flux(
            BenchTest test, Motor motor, Optional<Known> polePairs, DrivenValues values, ResultSheet sheet) {
        if (polePairs.isEmpty()) {
            FluxReduction.askForPolePairs(sheet, test, motor);
            return;
        }
        FluxReduction flux = new FluxReduction(test, motor);
        values.assumptions().forEach(flux::assume);
        Known perAmp = values.torqueConstant(flux.sheet()).orElseThrow();
        flux.addTorque(test.id(), perAmp, polePairs.get());
        sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
    }
}
