package servowright.engine.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.MotorFigure;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.StatedFigure;

/** Figures whose meaning depends on a basis that nobody stated: constants, resistances, currents. */
final class BasisNotStatedRule implements Rule {
    /** A reading that comes this near to the bench is the likely one. */
    private static final double CLOSES = 0.04;

    @Override
    public String id() {
        return "basis-not-stated";
    }

    @Override
    public Area area() {
        return Area.MOTOR;
    }

    @Override
    public String source() {
        return "factors between the bases: √2, √3, π/3, 3/2, 2; derived from the power balance";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        List<Finding> found = new ArrayList<>();
        predictions.machine().motors().forEach((name, motor) -> {
            List<StatedFigure> open = predictions.stated().getOrDefault(name, List.of()).stream()
                    .filter(f -> f.stated().isEmpty())
                    .toList();
            List<Declared> currents = openCurrents(
                    Stream.of(MotorFigure.RATED_CURRENT, MotorFigure.PEAK_CURRENT, MotorFigure.NO_LOAD_CURRENT)
                            .map(motor.figures()::get));
            judge(name, open, currents).ifPresent(found::add);
        });
        predictions.machine().drives().values().forEach(drive -> judge(drive).ifPresent(found::add));
        return found;
    }

    private Optional<Finding> judge(Drive drive) {
        return judge(
                drive.name(),
                List.of(),
                openCurrents(Stream.of(DriveFigure.CONTINUOUS_CURRENT, DriveFigure.PEAK_CURRENT)
                        .map(drive.figures()::get)));
    }

    private static List<Declared> openCurrents(Stream<Optional<Declared>> currents) {
        return currents.flatMap(Optional::stream)
                .filter(d -> d.stated().currentBasis().isEmpty())
                .toList();
    }

    private Optional<Finding> judge(String subject, List<StatedFigure> open, List<Declared> currents) {
        if (open.isEmpty() && currents.isEmpty()) {
            return Optional.empty();
        }
        boolean settled = currents.isEmpty()
                && open.stream().noneMatch(f -> f.closing(CLOSES).isEmpty());
        List<String> figures = Stream.concat(
                        open.stream()
                                .map(f -> f.what() + " " + f.declared().stated().text()),
                        currents.stream().map(d -> "current " + d.stated().text()))
                .toList();
        return Optional.of(Draft.of(this, subject)
                .verdict(settled ? Verdict.TIGHT : Verdict.NOT_SHOWN)
                .says(Phrase.of("no basis stated for {figures}").with("figures", String.join(", ", figures)))
                .because(reason(open, currents))
                .remedy(Phrase.of("{advice}").with("advice", advice(open, currents)))
                .needs(settled ? List.of() : needs(open, currents))
                .done());
    }

    private static Phrase reason(List<StatedFigure> open, List<Declared> currents) {
        String closing = open.stream()
                .filter(f -> !f.closing(CLOSES).isEmpty())
                .map(f -> f.what() + " closes with the bench as "
                        + f.closing(CLOSES).stream()
                                .map(StatedFigure.Reading::basis)
                                .collect(Collectors.joining(" or ")))
                .collect(Collectors.joining("; "));
        if (!closing.isEmpty()) {
            return Phrase.of("{closing}").with("closing", closing);
        }
        boolean resistance = open.stream().anyMatch(f -> f.what().equals("resistance"));
        if (!currents.isEmpty() && open.isEmpty()) {
            return Phrase.of("between phase RMS and q axis (phase peak) lies √2, between phase and supply any factor");
        }
        return Phrase.of(
                resistance
                        ? "two terminals read twice a phase; a constant moves by √3 from line to phase"
                        : "from line to phase it moves by √3, from peak to RMS by √2, to six-step by π/3");
    }

    private static String advice(List<StatedFigure> open, List<Declared> currents) {
        Optional<StatedFigure> unclear =
                open.stream().filter(f -> f.closing(CLOSES).isEmpty()).findFirst();
        if (unclear.isPresent()) {
            return "say it in square brackets: "
                    + unclear.get().readings().stream()
                            .map(r -> "[" + r.basis() + "]")
                            .collect(Collectors.joining(", "));
        }
        return currents.isEmpty()
                ? "write it in square brackets behind the figure"
                : "say whether it is [q axis], [phase rms] or [supply]; the manual tells";
    }

    private static List<Need> needs(List<StatedFigure> open, List<Declared> currents) {
        List<Need> needs = new ArrayList<>();
        for (StatedFigure figure : open) {
            needs.add(
                    figure.what().equals("resistance")
                            ? new Need("hook-up of the resistance", "read it between two terminals, four-wire")
                            : new Need("basis of the " + figure.what(), "a spin of the motor with the terminals open"));
        }
        if (!currents.isEmpty()) {
            needs.add(new Need("basis of the current", "the manual, or a current clamp on one phase"));
        }
        return needs;
    }
}
