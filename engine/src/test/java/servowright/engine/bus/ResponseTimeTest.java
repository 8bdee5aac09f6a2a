package servowright.engine.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.bus.ResponseTime.Schedule;

class ResponseTimeTest {
    private static final long TAU_125K = 8_000;

    private static Message message(String name, long sendUs, long periodUs, long deadlineUs) {
        return new Message(name, sendUs * 1000, periodUs * 1000, 0, deadlineUs * 1000);
    }

    /**
     * Davis, Burns, Bril, Lukkien 2007, table 1 and its discussion: A 2.0, B 3.0, C 3.5 ms and late, where the 1994 analysis says 3.0.
     * Table recalled; recomputed with an independent event simulation.
     */
    @Test
    void agrees_with_davis_2007_table_1() {
        List<ResponseTime> r = ResponseTime.of(
                List.of(message("A", 1000, 2500, 2500), message("B", 1000, 3500, 3250), message("C", 1000, 3500, 3250)),
                TAU_125K,
                FaultModel.none());
        assertThat(r).extracting(ResponseTime::worstNs).containsExactly(2_000_000L, 3_000_000L, 3_500_000L);
        assertThat(r)
                .extracting(ResponseTime::schedule)
                .containsExactly(Schedule.MEETS_DEADLINE, Schedule.MEETS_DEADLINE, Schedule.LATE);
        assertThat(r).extracting(ResponseTime::busyNs).containsExactly(2_000_000L, 5_000_000L, 7_000_000L);
        assertThat(r.get(1).instances()).containsExactly(3_000_000L, 1_500_000L);
        assertThat(r.get(2).instances()).containsExactly(3_000_000L, 3_500_000L);
        assertThat(ResponseTime.utilisation(
                        r.stream().map(ResponseTime::message).toList()))
                .isCloseTo(0.971429, within(1e-6));
    }

    /** The same set with 135-bit frames loads the bus to 1.049: recomputed, A 2.16, B 3.24 ms, C without bound. */
    @Test
    void an_overloaded_bus_has_no_bound_and_says_so() {
        List<ResponseTime> r = ResponseTime.of(
                List.of(message("A", 1080, 2500, 2500), message("B", 1080, 3500, 3250), message("C", 1080, 3500, 3250)),
                TAU_125K,
                FaultModel.none());
        assertThat(r.get(0).worstNs()).isEqualTo(2_160_000);
        assertThat(r.get(1).worstNs()).isEqualTo(3_240_000);
        assertThat(r.get(2).schedule()).isEqualTo(Schedule.NO_BOUND);
    }

    private static List<Message> broster() {
        int[] bytes = {8, 3, 3, 2, 5, 5, 4, 5, 4, 7, 5, 1};
        int[] periods = {10, 14, 20, 15, 20, 40, 15, 50, 20, 100, 50, 100};
        List<Message> set = new ArrayList<>();
        for (int i = 0; i < bytes.length; i++) {
            long c = ClassicalFrame.mostBits(IdLength.STANDARD, bytes[i]) * 4_000L;
            set.add(new Message("m" + (i + 1), c, periods[i] * 1_000_000L, 0, periods[i] * 1_000_000L));
        }
        return set;
    }

    /**
     * Broster, Burns, Rodríguez-Navas 2002, response times at 250 kbit/s without and with K faults: seen as published test values. That
     * paper ends a frame before its intermission of 3 bits and counts the intermission of the frame before as blocking of the lowest.
     */
    @Test
    void agrees_with_broster_2002_without_faults() {
        double[] published = {1.028, 1.368, 1.708, 2.008, 2.428, 2.848, 3.228, 3.648, 4.028, 4.448, 4.708, 4.720};
        List<ResponseTime> r = ResponseTime.of(broster(), 4_000, FaultModel.none(), 3 * 4_000);
        for (int i = 0; i < published.length; i++) {
            assertThat(r.get(i).worstNs() - 12_000).as("message %d", i + 1).isEqualTo(Math.round(published[i] * 1e6));
        }
    }

    @Test
    void agrees_with_broster_2002_with_faults() {
        double[] first = {1.028, 1.672, 2.316, 2.960, 3.604, 4.248, 4.892, 5.536, 6.180, 6.824};
        double[] eighth = {3.648, 4.292, 4.936, 5.580, 6.224, 6.868, 7.512, 8.156, 8.800, 9.444, 10.088};
        for (int k = 0; k < eighth.length; k++) {
            int faults = k;
            // 29 bits of recovery with a frame that ends before its intermission: 26 with ours
            FaultModel model = (interval, longest) -> faults * (26 * 4_000L + longest);
            List<ResponseTime> r = ResponseTime.of(broster(), 4_000, model, 12_000);
            if (k < first.length) {
                assertThat(r.get(0).worstNs() - 12_000).isEqualTo(Math.round(first[k] * 1e6));
            }
            assertThat(r.get(7).worstNs() - 12_000).isEqualTo(Math.round(eighth[k] * 1e6));
        }
    }

    /** The same paper, faults at 0.03 per ms: probabilities as printed (seen). */
    @Test
    void agrees_with_broster_2002_probabilities() {
        double[] one = {0.969631, 0.0293312, 9.99469e-4, 3.70872e-5, 1.45769e-6, 5.96774e-8, 2.51816e-9};
        double[] eight = {0.896336, 0.096218, 6.98767e-3, 4.32349e-4, 2.46289e-5, 1.33758e-6, 7.0527e-8};
        List<Double> p1 = FaultProbability.of(List.of(1.028, 1.672, 2.316, 2.960, 3.604, 4.248, 4.892), 0.03);
        List<Double> p8 = FaultProbability.of(List.of(3.648, 4.292, 4.936, 5.580, 6.224, 6.868, 7.512), 0.03);
        for (int k = 0; k < one.length; k++) {
            assertThat(p1.get(k)).as("message 1, %d faults", k).isCloseTo(one[k], within(6e-6 * one[k]));
            assertThat(p8.get(k)).as("message 8, %d faults", k).isCloseTo(eight[k], within(6e-6 * eight[k]));
        }
    }

    private static List<Message> sae(long bitNs) {
        int[] bytes = {1, 2, 1, 2, 1, 2, 6, 1, 2, 2, 1, 4, 1, 1, 3, 1, 1};
        long[] periodMs = {1000, 5, 5, 5, 5, 5, 10, 10, 10, 10, 100, 100, 100, 100, 1000, 1000, 1000};
        long[] deadlineMs = {5, 5, 5, 5, 5, 5, 10, 10, 10, 10, 100, 100, 100, 100, 1000, 1000, 1000};
        List<Message> set = new ArrayList<>();
        for (int i = 0; i < bytes.length; i++) {
            long c = ClassicalFrame.mostBits(IdLength.STANDARD, bytes[i]) * bitNs;
            set.add(new Message("s" + (i + 1), c, periodMs[i] * 1_000_000, 0, deadlineMs[i] * 1_000_000));
        }
        return set;
    }

    /** SAE benchmark of 17 packed messages at 125 kbit/s: set and published column recalled; reproduced to the microsecond. */
    @Test
    void agrees_with_the_sae_benchmark_at_125_kbit() {
        double[] published = {
            1.416, 2.016, 2.536, 3.136, 3.656, 4.256, 5.016, 8.376, 8.976, 9.576, 10.096, 19.096, 19.616, 20.136,
            28.976, 29.496, 29.520
        };
        List<ResponseTime> r = ResponseTime.of(sae(8_000), 8_000, FaultModel.none(), 24_000);
        for (int i = 0; i < published.length; i++) {
            assertThat(r.get(i).worstNs() - 24_000).as("message %d", i + 1).isEqualTo(Math.round(published[i] * 1e6));
        }
        assertThat(ResponseTime.utilisation(sae(8_000))).isCloseTo(0.85744, within(1e-5));
    }

    /** The same set at the other rates, intermission included: recomputed in another language. */
    @Test
    void the_sae_set_holds_at_all_rates() {
        double[] at1M = {
            0.180, 0.255, 0.320, 0.395, 0.460, 0.535, 0.630, 0.695, 0.770, 0.845, 0.910, 0.995, 1.060, 1.125, 1.190,
            1.255, 1.255
        };
        for (int factor : new int[] {1, 2, 4}) {
            List<ResponseTime> r = ResponseTime.of(sae(1_000L * factor), 1_000L * factor, FaultModel.none());
            for (int i = 0; i < at1M.length; i++) {
                assertThat(r.get(i).worstNs()).isEqualTo(Math.round(at1M[i] * factor * 1e6));
                assertThat(r.get(i).schedule()).isEqualTo(Schedule.MEETS_DEADLINE);
            }
        }
    }

    /** E(t) = ceil(t / 10 ms)(31 τ + max C), intermission included: recomputed in another language. */
    @Test
    void errors_cost_what_the_model_says() {
        double[] at1M = {
            .276, .361, .426, .501, .566, .641, .776, .841, .916, .991, 1.056, 1.141, 1.206, 1.271, 1.336, 1.401, 1.401
        };
        List<ResponseTime> r = ResponseTime.of(sae(1_000), 1_000, FaultModel.burstAndInterval(1, 10_000_000, 1_000));
        for (int i = 0; i < at1M.length; i++) {
            assertThat(r.get(i).worstNs()).as("message %d", i + 1).isEqualTo(Math.round(at1M[i] * 1e6));
        }
    }

    /** Jitter of the message adds to its own response; that of others brings one more of them into the window. */
    @Test
    void jitter_counts() {
        Message a = new Message("A", 1000, 10_000, 9_500, 20_000);
        Message b = new Message("B", 1000, 20_000, 500, 20_000);
        List<ResponseTime> r = ResponseTime.of(List.of(a, b), 10, FaultModel.none());
        assertThat(r.get(0).worstNs()).isEqualTo(9_500 + 1000 + 1000);
        assertThat(r.get(1).worstNs()).isEqualTo(500 + 2000 + 1000);
        assertThatThrownBy(() -> new Message("x", 0, 1, 0, 1)).hasMessageContaining("sending time of x");
    }

    /**
     * Eight messages of 135 us every 5 ms, a first-in-first-out node with numbers 1, 5, 8: message 1 takes 1215 us against 270 us by
     * priority. Derived from the equation of Davis, Kollmann, Pollex, Slomka 2011 (recalled).
     */
    @Test
    void a_first_in_first_out_queue_costs_its_highest_message_most() {
        List<Message> set = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            set.add(message("m" + (i + 1), 135, 5000, 5000));
        }
        List<Integer> group = List.of(0, -1, -1, -1, 0, -1, -1, 0);
        assertThat(FifoQueue.of(set, group, 1000).get(0).worstNs()).isEqualTo(1_215_000);
        assertThat(ResponseTime.of(set, 1000, FaultModel.none()).get(0).worstNs())
                .isEqualTo(270_000);
        assertThat(FifoQueue.of(set, List.of(-1, -1, -1, -1, -1, -1, -1, -1), 1000))
                .isEqualTo(ResponseTime.of(set, 1000, FaultModel.none()));
        assertThatThrownBy(() -> FifoQueue.of(set, List.of(0), 1000)).hasMessageContaining("8 against 1");
    }

    @Test
    void a_first_in_first_out_queue_longer_than_its_period_has_no_bound() {
        List<Message> set =
                List.of(message("a", 135, 300, 300), message("b", 135, 300, 300), message("c", 135, 5000, 5000));
        assertThat(FifoQueue.of(set, List.of(0, 0, -1), 1000).get(0).schedule()).isEqualTo(Schedule.NO_BOUND);
    }
}
