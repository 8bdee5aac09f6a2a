package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Time to ask all axes one after another, each asked only when the one before has answered, against letting all answer at once.
 *
 * <p><b>Formula.</b> One axis takes t = C_request + t_answer + C_answer + t_host; polled in turn n axes take n t, and one that is dead
 * takes its time-out instead. Streaming takes n (C_request + C_answer) and the last answer's delay.
 *
 * @param requestNs longest request, ns
 * @param answerNs  longest answer, ns
 * @param axisNs    from the request to the queued answer, ns
 * @param hostNs    from the answer to the next request, adapter and program together, ns
 */
public record Polling(long requestNs, long answerNs, long axisNs, long hostNs) {
    public Polling {
        Require.positive("request", (double) requestNs, "ns");
        Require.positive("answer", (double) answerNs, "ns");
        Require.notNegative("delay of the axis", (double) axisNs, "ns");
        Require.notNegative("delay of the host", (double) hostNs, "ns");
    }

    /** Round trip of one axis, ns. */
    public long roundTripNs() {
        return requestNs + axisNs + answerNs + hostNs;
    }

    /** A cycle of asking in turn, ns. */
    public long cycleNs(int axes) {
        return axes * roundTripNs();
    }

    /** A cycle in which some axes do not answer, ns. */
    public long cycleNs(int axes, int dead, long timeOutNs) {
        Require.within("dead axes", 0, axes, dead, "");
        return (axes - dead) * roundTripNs() + dead * (requestNs + timeOutNs);
    }

    /** A cycle in which all are asked first and answers are then collected, ns. */
    public long streamingNs(int axes) {
        return axes * (requestNs + answerNs) + axisNs + hostNs;
    }
}
