package servowright.engine.bus;

import java.util.Comparator;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * What an ohmmeter shows between the two bus lines with the power off: all terminators and the input resistances of all nodes in
 * parallel, R = 1 / (Σ 1/R_t + n / R_diff).
 *
 * <p><b>Valid for</b> a trunk whose own resistance is small against the terminators. Two of 120 ohm give 60; one 120; three 40; four
 * 30.
 */
public final class Terminators {
    private Terminators() {}

    /**
     * Reading, ohm.
     *
     * @param each     resistance of one terminator, ohm
     * @param count    how many; 0 leaves the nodes alone
     * @param nodes    how many nodes are connected
     * @param nodeOhm  differential input resistance of a node, ohm
     */
    public static double readingOhm(double each, int count, int nodes, double nodeOhm) {
        Require.positive("terminator", each, "ohm");
        Require.positive("input resistance of a node", nodeOhm, "ohm");
        Require.atLeast("number of terminators", 0, count);
        Require.atLeast("number of nodes", 0, nodes);
        return 1 / (count / each + nodes / nodeOhm);
    }

    /** How many terminators a reading means: the number whose reading is nearest in logarithm. */
    public static int countFor(double readingOhm, double each, int nodes, double nodeOhm) {
        Require.positive("reading", readingOhm, "ohm");
        int best = 0;
        double off = Double.POSITIVE_INFINITY;
        for (int n = 0; n <= 12; n++) {
            double expected = n == 0 && nodes == 0 ? 1e9 : readingOhm(each, n, nodes, nodeOhm);
            double distance = Math.abs(Math.log(readingOhm / expected));
            if (distance < off) {
                off = distance;
                best = n;
            }
        }
        return best;
    }

    /** A terminator and where it sits along the trunk. */
    public record Placed(double metre, double ohm) {
        public Placed {
            Require.notNegative("place of a terminator", metre, "m");
            Require.positive("terminator", ohm, "ohm");
        }
    }

    /**
     * Reading anywhere on a trunk whose wires have a resistance of their own, ohm; infinite without any terminator.
     *
     * <p><b>Formula.</b> To either side the farthest terminator in series with the loop of the wires up to the next, in parallel with that
     * one, and so on to the meter.
     *
     * @param placed     terminators in any order
     * @param loopOhmPerMetre resistance of both wires together, ohm/m
     * @param atMetre    where the meter is
     */
    public static double readingOhm(List<Placed> placed, double loopOhmPerMetre, double atMetre) {
        double left = 0;
        double leftAt = 0;
        double right = 0;
        double rightAt = 0;
        List<Placed> sorted = placed.stream()
                .sorted(Comparator.comparingDouble(Placed::metre))
                .toList();
        for (Placed p : sorted) {
            if (p.metre() <= atMetre) {
                left = carried(left, (p.metre() - leftAt) * loopOhmPerMetre) + 1 / p.ohm();
                leftAt = p.metre();
            }
        }
        for (int i = sorted.size() - 1; i >= 0 && sorted.get(i).metre() > atMetre; i--) {
            Placed p = sorted.get(i);
            right = carried(right, (rightAt - p.metre()) * loopOhmPerMetre) + 1 / p.ohm();
            rightAt = p.metre();
        }
        double here = carried(left, (atMetre - leftAt) * loopOhmPerMetre)
                + carried(right, (rightAt - atMetre) * loopOhmPerMetre);
        return here == 0 ? Double.POSITIVE_INFINITY : 1 / here;
    }

    /** Conductance seen through a series resistance, S. */
    private static double carried(double siemens, double ohm) {
        return siemens == 0 ? 0 : 1 / (1 / siemens + ohm);
    }
}
