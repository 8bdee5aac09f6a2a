package servowright.engine.bus;

/** Ceilings in integers. */
final class WholeNumbers {
    private WholeNumbers() {}

    /** The smallest whole number not below a / b, for b above 0. */
    static long ceilDivide(long a, long b) {
        return -Math.floorDiv(-a, b);
    }
}
