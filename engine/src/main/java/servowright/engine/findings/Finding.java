package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;

/**
 * A judged statement.
 *
 * @param id          a few plain words joined by hyphens: {@code speed-reach}
 * @param subject     name of the axis, motor or part it is about
 * @param area        which subject of the machine it belongs to
 * @param verdict     how it stands
 * @param statement   what, and by how much: {@code asks 3200 rpm, gets 2690 ± 40 rpm}
 * @param reason      why we think so; may be empty words
 * @param remedy      what to do, or what would change the verdict; may be empty words
 * @param needs       what to measure or state when it is not shown
 * @param margin      the judged figure against its limit, when there is one
 * @param working     how the figures came about
 * @param assumptions what was taken without being known
 * @param source      author, title, year, table; or {@code common practice}
 */
public record Finding(
        String id,
        String subject,
        Area area,
        Verdict verdict,
        Phrase statement,
        Phrase reason,
        Phrase remedy,
        List<Need> needs,
        Optional<Margin> margin,
        Working working,
        List<Phrase> assumptions,
        String source) {
    /** Subjects of a machine: what {@code --only} takes. */
    public enum Area {
        MOTOR("motor"),
        FIT("fit"),
        SUPPLY("supply"),
        HEAT("heat"),
        MOUNT("mount"),
        BUS("bus"),
        BENCH("bench");

        private final String words;

        Area(String words) {
            this.words = words;
        }

        /** As it is typed and shown. */
        public String words() {
            return words;
        }
    }

    /**
     * A figure against its limit.
     *
     * @param value what the axis has or gets
     * @param limit what it is held against
     * @param sense whether the value may be at most or must be at least the limit
     * @param unit  unit to show both in
     */
    public record Margin(Known value, Known limit, Sense sense, String unit) {
        /** What is left to the limit, as a share of it; negative beyond it. */
        public double relative() {
            double room = sense == Sense.AT_MOST ? limit.si() - value.si() : value.si() - limit.si();
            return limit.si() == 0 ? room : room / Math.abs(limit.si());
        }
    }

    /** On which side of its limit a figure should lie. */
    public enum Sense {
        AT_LEAST,
        AT_MOST
    }

    public Finding {
        needs = List.copyOf(needs);
        assumptions = List.copyOf(assumptions);
    }

    /** What is left to the limit as a share of it; infinite when there is no limit. */
    public double relativeRoom() {
        return margin.map(Margin::relative).orElse(Double.POSITIVE_INFINITY);
    }

    /** Key that {@code explain} takes: {@code lift/speed-reach}. */
    public String key() {
        return subject + "/" + id;
    }
}
