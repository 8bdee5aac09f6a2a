package servowright.engine.numeric;

/**
 * A sum of numbers and products carried in twice the precision of a double.
 *
 * <p>T. Ogita, S. M. Rump, S. Oishi, "Accurate Sum and Dot Product", SIAM J. Sci. Comput. 26 (2005), algorithms 3.3
 * (TwoProduct by fused multiply-add) and 5.3 (Dot2). Value from memory.
 */
final class AccurateSum {
    private double high;
    private double low;

    void add(double term) {
        double sum = high + term;
        double part = sum - high;
        low += (high - (sum - part)) + (term - part);
        high = sum;
    }

    void addProduct(double a, double b) {
        double product = a * b;
        low += Math.fma(a, b, -product);
        add(product);
    }

    double value() {
        return high + low;
    }

    static double of(double[] terms) {
        AccurateSum sum = new AccurateSum();
        for (double term : terms) {
            sum.add(term);
        }
        return sum.value();
    }

    static double dot(double[] a, double[] b) {
        AccurateSum sum = new AccurateSum();
        for (int i = 0; i < a.length; i++) {
            sum.addProduct(a[i], b[i]);
        }
        return sum.value();
    }
}
