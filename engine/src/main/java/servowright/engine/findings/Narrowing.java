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
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.Axis;

/**
 * A parameter of a motor whose uncertainty weighs in what is predicted of an axis: measuring it better would narrow the answer.
 *
 * <p><b>Formula.</b> Share of the variance of the judged figure that comes from the sources of the parameter, \( \sum_{s \in P} c_s^2 / \sum_s
 * c_s^2 \); weight is that share times the figure's standard uncertainty over its room to the limit, at most 1 for an answer
 * that is open. A source that several parameters rest on, such as an instrument, counts for the one it weighs most in. <b>Valid for</b>
 * first-order propagation. <b>Source.</b> JCGM 100:2008, 5.1.2.
 *
 * @param finding  whose figure it is
 * @param motor    name of the motor
 * @param what     the parameter
 * @param share    of the variance of the judged figure
 * @param weight   how much it matters, from 0 to 1
 * @param advice   what would narrow it: the test it lacks, or the weakest part of those that were made
 */
public record Narrowing(
        Finding finding, String motor, MotorParameter what, double share, double weight, Phrase advice) {
    private static final double LEAST_SHARE = 0.05;

    /** Below this a narrower figure changes no verdict: the limit lies twenty standard uncertainties off. */
    private static final double LEAST_WEIGHT = 0.1;

    /** Whether a narrower figure could change a verdict. */
    public boolean matters() {
        return weight >= LEAST_WEIGHT;
    }

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
        double u = margin.value().standardUncertainty();
        double room = Math.abs(margin.value().si() - margin.limit().si());
        double open = room > 0 ? Math.min(1, 2 * u / room) : 1;
        Map<Source, MotorParameter> owners = owners(motor);
        for (MotorParameter what : motor.parameters().keySet()) {
            Optional<Known> best = motor.best(what).found();
            double part = margin.value().parts().entrySet().stream()
                    .filter(e -> owners.get(e.getKey()) == what)
                    .mapToDouble(e -> e.getValue() * e.getValue())
                    .sum();
            if (best.isPresent() && part > LEAST_SHARE * u * u) {
                double share = part / (u * u);
                Phrase advice = NarrowingAdvice.of(what, best.get());
                found.add(new Narrowing(finding, motor.name(), what, share, share * open, advice));
            }
        }
        return found;
    }

    /** For each source the parameter in whose variance it has the largest share. */
    private static Map<Source, MotorParameter> owners(IdentifiedMotor motor) {
        Map<Source, MotorParameter> owners = new HashMap<>();
        Map<Source, Double> shares = new HashMap<>();
        for (MotorParameter what : motor.parameters().keySet()) {
            Optional<Known> best = motor.best(what).found();
            if (best.isPresent()) {
                double u = best.get().standardUncertainty();
                best.get().parts().forEach((source, c) -> {
                    double share = Math.abs(c) / u;
                    if (share > shares.getOrDefault(source, 0.0)) {
                        shares.put(source, share);
                        owners.put(source, what);
                    }
                });
            }
        }
        return owners;
    }
}
