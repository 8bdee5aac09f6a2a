package servowright.engine.control;

import servowright.engine.quantity.Require;

/**
 * What a first-order lag with a delay makes of an input that is held from sample to sample, and how that depends on its figures.
 *
 * <p><b>Formula.</b> Between two changes of the delayed input v the forced part is exact, f(t + h) = v + (f(t) − v) e^{−h/τ}, as for K = 1,
 * with f = u₀ at the start; its derivative by τ follows along, that by T is −df/dt = −(v − f)/τ. Natural part e^{−(t − t₀)/τ}. Output
 * y = K f + A e^{−(t − t₀)/τ} + c. <b>Valid for</b> an input that stood still before the recording, or A that makes up for it.
 * <b>Source.</b> {@link DelayedLag}, exact solution for a held input; sensitivity by differentiating it, derived.
 *
 * @param forced   f at each sample, unit of the input
 * @param byTau    df/dτ
 * @param byDelay  df/dT
 * @param natural  the part that dies away, starting from 1
 * @param naturalByTau its derivative by τ
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: one run of one recording
public record LagRun(double[] forced, double[] byTau, double[] byDelay, double[] natural, double[] naturalByTau) {

    /** Runs an input with rising times through a lag of gain 1. */
    public static LagRun of(double[] seconds, double[] input, double tauSecond, double delaySecond) {
        Require.positive("time constant", tauSecond, "s");
        Require.notNegative("delay", delaySecond, "s");
        Walk walk = new Walk(seconds, input, tauSecond, delaySecond);
        int n = seconds.length;
        LagRun run = new LagRun(new double[n], new double[n], new double[n], new double[n], new double[n]);
        for (int k = 0; k < n; k++) {
            walk.to(seconds[k]);
            double age = (seconds[k] - seconds[0]) / tauSecond;
            run.forced[k] = walk.value;
            run.byTau[k] = walk.byTau;
            run.byDelay[k] = -(walk.held - walk.value) / tauSecond;
            run.natural[k] = Math.exp(-age);
            run.naturalByTau[k] = run.natural[k] * age / tauSecond;
        }
        return run;
    }

    /** The state while it moves from one time to the next. */
    private static final class Walk {
        private final double[] seconds;
        private final double[] input;
        private final double tau;
        private final double delay;
        private int next = 1;
        private double now;
        private double held;
        private double value;
        private double byTau;

        Walk(double[] seconds, double[] input, double tau, double delay) {
            this.seconds = seconds;
            this.input = input;
            this.tau = tau;
            this.delay = delay;
            this.now = seconds[0];
            this.held = input[0];
            this.value = input[0];
        }

        void to(double time) {
            while (next < input.length && seconds[next] + delay < time) {
                step(Math.max(0, seconds[next] + delay - now));
                held = input[next];
                next++;
            }
            step(time - now);
        }

        private void step(double h) {
            if (h > 0) {
                double decay = Math.exp(-h / tau);
                double off = value - held;
                byTau = (byTau + off * h / (tau * tau)) * decay;
                value = held + off * decay;
                now += h;
            }
        }
    }
}
