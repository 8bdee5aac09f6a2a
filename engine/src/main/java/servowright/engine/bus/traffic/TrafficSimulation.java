package servowright.engine.bus.traffic;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.random.RandomGenerator;
import org.jspecify.annotations.Nullable;
import servowright.engine.bus.ErrorFrame;
import servowright.engine.bus.ErrorState;
import servowright.engine.bus.ErrorState.Mode;
import servowright.engine.bus.traffic.Watcher.Spoilt;
import servowright.engine.numeric.GivenUp;

/**
 * Runs the traffic of a bus event by event: when the bus is free, all messages that are ready take part in the arbitration and the lowest
 * identifier is sent; broken frames cost the bits up to the error, an error frame, and are sent again.
 *
 * <p>An error frame takes 17 to 23 bits, evenly spread. A node that destroys frames stops doing so once it is error passive. Two nodes
 * that win with one identifier destroy each other's frames. A frame that no second powered node hears is not acknowledged. Not simulated:
 * the 8 bits a passive sender waits longer, and overload frames.
 */
public final class TrafficSimulation {
    private static final int DESTROYER_STEP = 9;

    private final Traffic traffic;
    private final RandomGenerator random;
    private final Watcher watcher;
    private final Waiting[] byPriority;
    private final List<Waiting> given = new ArrayList<>();
    private final ErrorState[] states;
    private final long[] awayUntil;
    private final long[] freeSince;
    private final int[] left;
    private final boolean[] wasPowered;
    private final double logKeep;
    private final boolean plain;
    private final boolean byPriorityOnly;
    private long frames;
    private long broken;
    private long busyNs;

    private TrafficSimulation(Traffic traffic, RandomGenerator random, Watcher watcher) {
        this.traffic = traffic;
        this.random = random;
        this.watcher = watcher;
        for (Stream s : traffic.streams()) {
            FrameMaker maker = new FrameMaker(s, traffic.bitNs(), traffic.dataBitNs());
            given.add(new Waiting(s, traffic.senders().get(s.node()), maker, traffic.queueDepth()));
        }
        this.byPriority = given.stream()
                .sorted(Comparator.comparingLong(w -> w.stream.arbitration()))
                .toArray(Waiting[]::new);
        int nodes = traffic.senders().size();
        this.states = new ErrorState[nodes];
        Arrays.fill(states, ErrorState.FRESH);
        this.awayUntil = new long[nodes];
        this.freeSince = new long[nodes];
        this.left = new int[nodes];
        this.wasPowered = new boolean[nodes];
        this.logKeep = Math.log1p(-traffic.bitErrors());
        this.byPriorityOnly = traffic.senders().stream().allMatch(s -> s.queue() == Sender.Queue.PRIORITY);
        this.plain = traffic.bitErrors() == 0
                && traffic.senders().stream().allMatch(s -> s.destroys() == 0 && s.offFromNs() == Long.MAX_VALUE);
    }

    /**
     * Runs from 0 to an end.
     *
     * @param random whence jitter, payloads and errors come; the same source gives the same traffic
     */
    public static TrafficFigures run(Traffic traffic, long untilNs, RandomGenerator random, Watcher watcher) {
        TrafficSimulation s = new TrafficSimulation(traffic, random, watcher);
        s.run(untilNs);
        return new TrafficFigures(
                s.given.stream().map(Waiting::figures).toList(),
                List.of(s.states),
                Arrays.stream(s.left).boxed().toList(),
                s.frames,
                s.broken,
                (double) s.busyNs / untilNs);
    }

    private void run(long untilNs) {
        long now = Math.min(0, earliest());
        while (now < untilNs) {
            GivenUp.check();
            if (!plain) {
                power(now);
            }
            comeBack(now);
            int winner = release(now);
            if (winner < 0) {
                now = Math.max(now + 1, earliest());
            } else {
                long start = now;
                now = send(winner, start);
                busyNs += now - start;
            }
        }
    }

    private long earliest() {
        long least = Long.MAX_VALUE;
        for (Waiting w : byPriority) {
            least = Math.min(least, w.nextReady());
        }
        for (int n = 0; n < awayUntil.length; n++) {
            if (states[n].mode() == Mode.BUS_OFF) {
                least = Math.min(least, awayUntil[n]);
            }
        }
        return least;
    }

    /** Queues what is due and finds the place of the most urgent message that its node offers; -1 when there is none. */
    private int release(long now) {
        int winner = -1;
        for (int i = 0; i < byPriority.length; i++) {
            Waiting w = byPriority[i];
            while (w.nextReady() <= now) {
                long jitter = w.stream.jitterNs() == 0 ? 0 : random.nextLong(w.stream.jitterNs() + 1);
                w.queue(plain || w.sender.powered(w.nextReady()), jitter);
            }
            if (winner < 0 && w.waits() && w.sender.queue() == Sender.Queue.PRIORITY && onBus(w)) {
                winner = i;
            }
        }
        return byPriorityOnly ? winner : offered();
    }

    private int offered() {
        for (Waiting w : byPriority) {
            if (w.sender.queue() == Sender.Queue.BUFFERS && w.waits()) {
                fillBuffers(w);
            }
        }
        for (int i = 0; i < byPriority.length; i++) {
            Waiting w = byPriority[i];
            if (w.waits() && onBus(w) && offers(w)) {
                return i;
            }
        }
        return -1;
    }

    private boolean offers(Waiting w) {
        return switch (w.sender.queue()) {
            case PRIORITY -> true;
            case FIRST_IN_FIRST_OUT -> oldest(w);
            case BUFFERS -> w.inBuffer;
        };
    }

    private boolean oldest(Waiting w) {
        for (Waiting other : byPriority) {
            if (other.stream.node() == w.stream.node() && other.waits() && other.headReady() < w.headReady()) {
                return false;
            }
        }
        return true;
    }

    /** Fills the free buffers of a node: with the most urgent that waited when one became free, then with the first to come. */
    private void fillBuffers(Waiting one) {
        long free = freeSince[one.stream.node()];
        int used = 0;
        for (Waiting w : byPriority) {
            used += w.stream.node() == one.stream.node() && w.inBuffer ? 1 : 0;
        }
        while (used < one.sender.buffers()) {
            @Nullable Waiting next = null;
            for (Waiting w : byPriority) {
                boolean wants = w.stream.node() == one.stream.node() && w.waits() && !w.inBuffer;
                if (wants && (next == null || Math.max(free, w.headReady()) < Math.max(free, next.headReady()))) {
                    next = w;
                }
            }
            if (next == null) {
                return;
            }
            next.inBuffer = true;
            used++;
        }
    }

    private boolean onBus(Waiting w) {
        return states[w.stream.node()].mode() != Mode.BUS_OFF;
    }

    /** Nodes that lose power forget their queues and errors; those away long enough come back. */
    private void power(long now) {
        for (int n = 0; n < states.length; n++) {
            Sender sender = traffic.senders().get(n);
            boolean on = sender.powered(now);
            if (wasPowered[n] && !on) {
                for (Waiting w : byPriority) {
                    if (w.stream.node() == n) {
                        w.forget();
                    }
                }
                states[n] = ErrorState.FRESH;
            }
            wasPowered[n] = on;
        }
    }

    private void comeBack(long now) {
        for (int n = 0; n < states.length; n++) {
            if (states[n].mode() == Mode.BUS_OFF && now >= awayUntil[n]) {
                states[n] = ErrorState.FRESH;
                watcher.back(traffic.senders().get(n), now);
            }
        }
    }

    /** Sends the frame of the winner, or breaks it off; gives the time at which the bus is free again. */
    private long send(int winner, long start) {
        Waiting w = byPriority[winner];
        long length = w.maker.next(random);
        int twin = twin(winner);
        if (twin >= 0) {
            long end = breakOff(w, Spoilt.SAME_IDENTIFIER, start, length);
            failed(byPriority[twin].stream.node(), states[byPriority[twin].stream.node()].sendingFailed(), end);
            return end;
        }
        if (!plain) {
            if (hearers(w, start) == 0) {
                return breakOff(w, Spoilt.NOT_ACKNOWLEDGED, start, length);
            }
            int destroyer = destroyer(w, start);
            if (destroyer >= 0) {
                for (int k = 0; k < DESTROYER_STEP; k++) {
                    states[destroyer] = states[destroyer].receivingFailed();
                }
                return breakOff(w, Spoilt.DESTROYED, start, length);
            }
            if (random.nextDouble() > Math.exp(logKeep * length / traffic.bitNs())) {
                return breakOff(w, Spoilt.NOISE, start, length);
            }
        }
        return through(w, start, start + length);
    }

    private long through(Waiting w, long start, long end) {
        watcher.frame(w.stream, w.headEvent(), start, end, w.maker.payload());
        w.through(end);
        freeSince[w.stream.node()] = end;
        frames++;
        for (int n = 0; n < states.length; n++) {
            if (n == w.stream.node()) {
                states[n] = states[n].sent();
            } else if (traffic.senders().get(n).destroys() == 0) {
                states[n] = states[n].received();
            }
        }
        return end;
    }

    private long breakOff(Waiting w, Spoilt why, long start, long length) {
        long bits = length / traffic.bitNs();
        long at =
                why == Spoilt.NOISE ? 1 + random.nextLong(bits) : why == Spoilt.SAME_IDENTIFIER ? bits / 2 : bits - 11;
        int signal = ErrorFrame.LEAST_BITS + random.nextInt(ErrorFrame.MOST_BITS - ErrorFrame.LEAST_BITS + 1);
        long end = start + (Math.max(1, at) + signal) * traffic.bitNs();
        int node = w.stream.node();
        broken++;
        ErrorState after =
                why == Spoilt.NOT_ACKNOWLEDGED ? states[node].notAcknowledged() : states[node].sendingFailed();
        watcher.broken(w.stream, why, start, end, after);
        for (int n = 0; n < states.length; n++) {
            if (n != node
                    && states[n].mode() != Mode.BUS_OFF
                    && traffic.senders().get(n).powered(start)) {
                states[n] = states[n].receivingFailed();
            }
        }
        failed(node, after, end);
        return end;
    }

    private void failed(int node, ErrorState after, long end) {
        states[node] = after;
        if (after.mode() == Mode.BUS_OFF) {
            Sender sender = traffic.senders().get(node);
            long wait = sender.restartNs();
            awayUntil[node] = wait < 0 ? Long.MAX_VALUE : end + wait + ErrorState.recoveryNs(traffic.bitNs());
            left[node]++;
            watcher.left(sender, end);
        }
    }

    /** Another node that offers the same identifier now; -1 when there is none. */
    private int twin(int winner) {
        Waiting w = byPriority[winner];
        for (int i = winner + 1; i < byPriority.length && byPriority[i].stream.id() == w.stream.id(); i++) {
            Waiting other = byPriority[i];
            if (other.stream.node() != w.stream.node() && other.waits() && onBus(other) && offers(other)) {
                return i;
            }
        }
        return -1;
    }

    private int hearers(Waiting w, long now) {
        int count = 0;
        for (int n = 0; n < states.length; n++) {
            boolean there =
                    states[n].mode() != Mode.BUS_OFF && traffic.senders().get(n).powered(now);
            count += n != w.stream.node() && there ? 1 : 0;
        }
        return count;
    }

    private int destroyer(Waiting w, long now) {
        for (int n = 0; n < states.length; n++) {
            Sender s = traffic.senders().get(n);
            boolean can = s.destroys() > 0 && n != w.stream.node() && s.powered(now);
            boolean active = states[n].mode() == Mode.ACTIVE || states[n].mode() == Mode.WARNING;
            if (can && active && random.nextDouble() < s.destroys()) {
                return n;
            }
        }
        return -1;
    }
}
