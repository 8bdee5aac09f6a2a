package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * What a cycle of one command and one reply per axis asks of the bus.
 *
 * <p><b>Formula.</b> t = n (C_command + C_reply) + C_sync; highest cycle rate 1 / t; load at a rate f: t f; axes that fit into a
 * cycle: floor((1/f - C_sync) / (C_command + C_reply)). <b>Valid for</b> a bus that carries nothing else; other traffic, errors and
 * pauses of the nodes come on top. <b>Source.</b> derived, sum of the frames.
 *
 * @param commandSecond time a command holds the bus, s
 * @param replySecond   time a reply holds the bus, s
 * @param syncSecond    time of what is sent once a cycle for all axes, s; 0 if there is none
 */
public record CycleLoad(double commandSecond, double replySecond, double syncSecond) {
    public CycleLoad {
        Require.notNegative("time of a command", commandSecond, "s");
        Require.notNegative("time of a reply", replySecond, "s");
        Require.positive("time of both", commandSecond + replySecond, "s");
        Require.notNegative("time of what is sent once", syncSecond, "s");
    }

    /** Time that a cycle of so many axes takes, s. */
    public double cycleSecond(int axes) {
        Require.atLeast("number of axes", 1, axes);
        return axes * (commandSecond + replySecond) + syncSecond;
    }

    /** Share of the bus that so many axes take at a cycle rate in Hz; above 1 it cannot be. */
    public double load(int axes, double hertz) {
        Require.positive("cycle rate", hertz, "Hz");
        return cycleSecond(axes) * hertz;
    }

    /** The most axes that fit into a cycle; 0 if not even one does. */
    public int mostAxes(double hertz) {
        Require.positive("cycle rate", hertz, "Hz");
        double free = 1 / hertz - syncSecond;
        return (int) Math.max(0, Math.floor(free / (commandSecond + replySecond) + 1e-9));
    }
}
