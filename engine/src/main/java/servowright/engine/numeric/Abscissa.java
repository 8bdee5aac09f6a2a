package servowright.engine.numeric;

/** Where samples lie in time or angle, and fast sines over them in blocks. */
abstract class Abscissa {
    private final int count;
    private final double first;
    private final double last;

    private Abscissa(int count, double first, double last) {
        this.count = count;
        this.first = first;
        this.last = last;
    }

    static Abscissa even(int count, double interval) {
        return new Even(count, interval);
    }

    static Abscissa listed(double[] places) {
        Check.that(places.length > 0, "an abscissa needs at least one place");
        Check.finite("an abscissa", places);
        return new Listed(places);
    }

    int count() {
        return count;
    }

    /** Whether all distances between neighbours are equal. */
    abstract boolean even();

    double middle() {
        return 0.5 * (first + last);
    }

    double first() {
        return first;
    }

    double halfSpan() {
        return 0.5 * Math.abs(last - first);
    }

    double meanInterval() {
        return count > 1 ? Math.abs(last - first) / (count - 1) : 0;
    }

    /** Fills distances from the middle, and cosine and sine of omega times the distance, for a block of samples. */
    abstract void fill(int start, int length, double omega, double[] distance, double[] cosine, double[] sine);

    /** Sines by turning a pointer from sample to sample; set anew at each block, so that rounding does not add up. */
    private static final class Even extends Abscissa {
        private final double interval;

        Even(int count, double interval) {
            super(count, 0, interval * Math.max(0, count - 1));
            this.interval = interval;
        }

        @Override
        boolean even() {
            return true;
        }

        @Override
        void fill(int start, int length, double omega, double[] distance, double[] cosine, double[] sine) {
            double centre = 0.5 * (count() - 1);
            double turnCosine = Math.cos(omega * interval);
            double turnSine = Math.sin(omega * interval);
            double angle = omega * interval * (start - centre);
            double c = Math.cos(angle);
            double s = Math.sin(angle);
            for (int i = 0; i < length; i++) {
                distance[i] = (start + i - centre) * interval;
                cosine[i] = c;
                sine[i] = s;
                double next = c * turnCosine - s * turnSine;
                s = s * turnCosine + c * turnSine;
                c = next;
            }
        }
    }

    private static final class Listed extends Abscissa {
        private final double[] places;

        Listed(double[] places) {
            super(places.length, places[0], places[places.length - 1]);
            this.places = places;
        }

        @Override
        boolean even() {
            return false;
        }

        @Override
        void fill(int start, int length, double omega, double[] distance, double[] cosine, double[] sine) {
            double middle = middle();
            for (int i = 0; i < length; i++) {
                distance[i] = places[start + i] - middle;
                cosine[i] = Math.cos(omega * distance[i]);
                sine[i] = Math.sin(omega * distance[i]);
            }
        }
    }
}
