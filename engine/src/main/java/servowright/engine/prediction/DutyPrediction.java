package servowright.engine.prediction;

import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Duty;

/** What is predicted of one axis doing one duty. */
public record DutyPrediction(
        Duty duty,
        Outcome<Demand> demand,
        Outcome<Current> current,
        Outcome<Draw> draw,
        Outcome<Reach> reach,
        Outcome<Known> frequency,
        Outcome<Commutation> commutation,
        Outcome<Heat> heat,
        Outcome<Release> release,
        Outcome<Returned> returned) {

    static DutyPrediction of(AxisParts parts, Duty duty) {
        return new DutyPrediction(
                duty,
                DemandStudy.of(parts, duty),
                CurrentStudy.of(parts, duty),
                DrawStudy.of(parts, duty),
                SpeedReachStudy.of(parts, duty),
                CommutationStudy.frequency(parts, duty),
                CommutationStudy.of(parts, duty),
                HeatStudy.of(parts, duty),
                ReleaseStudy.of(parts, duty),
                ReturnStudy.of(parts, duty));
    }

    /** False only for what is known to be a hold. */
    public boolean moves() {
        return demand.found().filter(Demand::atRest).isEmpty();
    }
}
