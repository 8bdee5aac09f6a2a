package servowright.engine.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.findings.Finding.Margin;
import servowright.engine.known.Known;
import servowright.engine.known.Source;
import servowright.engine.machine.Axis;

/**
 * A parameter of a motor whose uncertainty weighs in what is predicted of an axis: measuring it better would narrow the answer.
 *
 * <p><b>Formula.</b> Share of the variance of the judged figure that comes from the sources of the parameter, \( \sum_{s \in P} c_s^2 / \sum_s
 * c_s^2 \); weight is that share times the figure's standard uncertainty over its room to the limit, at most 1 for an answer
 * that is open. <b>Valid for</b> first-order propagation; parameters that share an instrument share its part. <b>Source.</b> JCGM 100:2008, 5.1.2.
 *
 * @param finding  whose figure it is
 * @param motor    name of the motor
 * @param what     the parameter
 * @param share    of the variance of the judged figure
 * @param weight   how much it matters, from 0 to 1
 */
public record Narrowing(Finding finding, String motor, MotorParameter what, double share, double weight) {
    private static final double LEAST_SHARE = 0.05;

    /** Every parameter that weighs in a judged figure, the heaviest first, one line per parameter. */
    public static List<Narrowing> of(List<Finding> findings, IdentifiedMachine identified) {
        Map<String, Narrowing> heaviest = new HashMap<>();
        for (Finding finding : findings) {
            Optional<IdentifiedMotor> motor = Optional.ofNullable(
                            identified.machine().axes().get(finding.subject()))
                    .flatMap(Axis::motor)
                    .flatMap(identified::motor);
            if (motor.isPresent() && finding.margin().isPresent()) {
                for (Narrowing one : of(finding, finding.margin().get(), motor.get())) {
                    heaviest.merge(one.motor() + " " + one.what(), one, (a, b) -> b.weight() > a.weight() ? b : a);
                }
            }
        }
        return heaviest.values().stream()
                .sorted(Comparator.comparingDouble((Narrowing n) -> -n.weight())
                        .thenComparing(Narrowing::motor)
                        .thenComparing(Narrowing::what))
                .toList();
    }

    private static List<Narrowing> of(Finding finding, Margin margin, IdentifiedMotor motor) {
        List<Narrowing> found = new ArrayList<>();
        double all = variance(margin.value(), margin.value());
        double room = Math.abs(margin.value().si() - margin.limit().si());
        double open = room > 0 ? Math.min(1, 2 * Math.sqrt(all) / room) : 1;
        for (MotorParameter what : motor.parameters().keySet()) {
            Optional<Known> best = motor.best(what).found();
            double share = all == 0 || best.isEmpty() ? 0 : variance(margin.value(), best.get()) / all;
            if (share > LEAST_SHARE) {
                found.add(new Narrowing(finding, motor.name(), what, share, share * open));
            }
        }
        return found;
    }

    /** Variance of a figure from the sources of another. */
    private static double variance(Known figure, Known of) {
        double sum = 0;
        for (Map.Entry<Source, Double> part : figure.parts().entrySet()) {
            sum += of.parts().containsKey(part.getKey()) ? part.getValue() * part.getValue() : 0;
        }
        return sum;
    }
}
