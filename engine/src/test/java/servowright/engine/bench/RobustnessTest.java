package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.numeric.Statistics;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/**
 * Every kind of test that takes a recording, fed worse ones, channel by channel: it refuses, or says what is wrong, or its number is still
 * within three standard uncertainties of the truth.
 */
class RobustnessTest {
    private static final double MOST_OFF = 3;

    /** What a flag says: something is cut off, turned round, or stands still. */
    private static final List<String> FLAGS = List.of(
            "cut off",
            "opposite senses",
            "counted against",
            "counts against",
            "output falls when the input rises",
            "hardly moves");

    /** What is done to a channel. */
    private enum Spoilt {
        FLAT {
            @Override
            double[] of(double[] v) {
                double[] flat = new double[v.length];
                Arrays.fill(flat, Statistics.mean(v));
                return flat;
            }
        },
        TOP_30 {
            @Override
            double[] of(double[] v) {
                return cut(v, Double.NEGATIVE_INFINITY, Statistics.quantile(v, 0.7));
            }
        },
        FOOT_30 {
            @Override
            double[] of(double[] v) {
                return cut(v, Statistics.quantile(v, 0.3), Double.POSITIVE_INFINITY);
            }
        },
        TOP_60 {
            @Override
            double[] of(double[] v) {
                return cut(v, Double.NEGATIVE_INFINITY, Statistics.quantile(v, 0.4));
            }
        },
        FOOT_60 {
            @Override
            double[] of(double[] v) {
                return cut(v, Statistics.quantile(v, 0.6), Double.POSITIVE_INFINITY);
            }
        },
        BOTH_60 {
            @Override
            double[] of(double[] v) {
                return cut(v, Statistics.quantile(v, 0.3), Statistics.quantile(v, 0.7));
            }
        },
        STRETCH {
            @Override
            double[] of(double[] v) {
                double[] stuck = v.clone();
                Arrays.fill(
                        stuck,
                        v.length / 4,
                        v.length / 2,
                        Arrays.stream(v).max().orElseThrow());
                return stuck;
            }
        },
        HOLES {
            @Override
            double[] of(double[] v) {
                double[] holes = v.clone();
                for (int i = 7; i < holes.length; i += 50) {
                    holes[i] = Double.NaN;
                }
                return holes;
            }
        },
        MANY_HOLES {
            @Override
            double[] of(double[] v) {
                double[] holes = v.clone();
                Random random = new Random(31);
                for (int i = 0; i < holes.length; i++) {
                    holes[i] = random.nextDouble() < 0.4 ? Double.NaN : holes[i];
                }
                return holes;
            }
        },
        ONE {
            @Override
            double[] of(double[] v) {
                return new double[] {v[v.length / 3]};
            }
        },
        REVERSED {
            @Override
            double[] of(double[] v) {
                return Arrays.stream(v).map(x -> -x).toArray();
            }
        };

        abstract double[] of(double[] values);

        private static double[] cut(double[] v, double least, double most) {
            return Arrays.stream(v).map(x -> Math.max(least, Math.min(most, x))).toArray();
        }
    }

    private static Recording spoilt(Recording good, int channel, Spoilt how) {
        List<Channel> channels = new ArrayList<>(good.channels());
        for (int k = 0; k < channels.size(); k++) {
            if (k == channel || how == Spoilt.ONE) {
                Channel c = channels.get(k);
                channels.set(k, new Channel(c.name(), c.unit(), how.of(c.samples())));
            }
        }
        Clock clock = how == Spoilt.ONE ? Clock.uniform(0, good.clock().intervalS(), 1) : good.clock();
        return new Recording(good.name(), "0", clock, channels, List.of());
    }

    static Stream<Fed> all() {
        return Fed.all();
    }

    /** The recordings themselves give every number, and say nothing of limits. */
    @ParameterizedTest
    @MethodSource("all")
    void gives_the_truth_from_a_good_recording(Fed fed) {
        TestResult result = fed.reduced().apply(fed.good());
        fed.truth().forEach((what, truth) -> {
            assertThat(result.outcome(what).found()).as(what.words()).isPresent();
            assertThat(off(result, what, truth)).as(what.words()).isLessThan(MOST_OFF);
        });
        assertThat(words(result)).doesNotContain("cut off").doesNotContain("limit");
    }

    @ParameterizedTest
    @MethodSource("all")
    void gives_no_confident_number_from_a_bad_one(Fed fed) {
        List<String> wrong = new ArrayList<>();
        for (int k = 0; k < fed.good().channels().size(); k++) {
            for (Spoilt how : Spoilt.values()) {
                TestResult result = fed.reduced().apply(spoilt(fed.good(), k, how));
                wrong.addAll(
                        wrong(fed, result, how, fed.good().channels().get(k).name()));
            }
        }
        assertThat(wrong).isEmpty();
    }

    /** Another kind of recording: channels of the same names that show something else. */
    @ParameterizedTest
    @MethodSource("all")
    void refuses_another_kind_of_recording(Fed fed) {
        List<Channel> others = fed.good().channels().stream()
                .map(c -> Given.channel(c.name() + "2", "bar", c.samples()))
                .toList();
        Recording other = new Recording(fed.good().name(), "0", fed.good().clock(), others, List.of());
        TestResult result = fed.reduced().apply(other);
        fed.truth()
                .keySet()
                .forEach(what -> assertThat(result.outcome(what).found())
                        .as(what.words())
                        .isEmpty());
        assertThat(result.values()).isNotEmpty();
    }

    /** A sign alone cannot be told: these turn with the recording. */
    private static double turned(Sought what, double truth, Spoilt how, TestResult result) {
        boolean offset = what == SensingParameter.OFFSET_A
                || what == SensingParameter.OFFSET_B
                || what == SensingParameter.OFFSET_C;
        if (how == Spoilt.REVERSED && what == ResponseParameter.PHASE) {
            return Math.IEEEremainder(truth + Math.PI, 2 * Math.PI);
        }
        boolean turned = result.outcome(what)
                .found()
                .filter(c -> c.value().si() * truth < 0)
                .isPresent();
        return how == Spoilt.REVERSED && offset && turned ? -truth : truth;
    }

    private static List<String> wrong(Fed fed, TestResult result, Spoilt how, String channel) {
        List<String> wrong = new ArrayList<>();
        fed.truth().forEach((sought, right) -> {
            double truth = turned(sought, right, how, result);
            String what = how + " " + channel;
            Optional<Candidate> found = result.outcome(sought).found();
            if (found.isPresent() && !flagged(result) && !(off(result, sought, truth) <= MOST_OFF)) {
                wrong.add(String.format(
                        Locale.ROOT,
                        "%s: %s is %s, off by %.1f",
                        what,
                        sought.words(),
                        shown(found.get().value()),
                        off(result, sought, truth)));
            }
        });
        return wrong;
    }

    private static String shown(Known known) {
        return String.format(Locale.ROOT, "%.6g ± %.2g", known.si(), known.standardUncertainty());
    }

    private static double off(TestResult result, Sought what, double truth) {
        Known found = result.outcome(what).found().orElseThrow().value();
        return Math.abs(found.si() - truth) / found.standardUncertainty();
    }

    private static String words(TestResult result) {
        return String.join(
                " / ",
                Stream.concat(result.details().stream(), result.remarks().stream())
                        .map(Phrase::template)
                        .toList());
    }

    private static boolean flagged(TestResult result) {
        String said = words(result);
        return FLAGS.stream().anyMatch(said::contains);
    }
}
