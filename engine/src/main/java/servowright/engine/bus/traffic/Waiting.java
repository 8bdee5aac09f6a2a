package servowright.engine.bus.traffic;

/** One stream while the simulation runs: its next event and its messages that wait. */
final class Waiting {
    final Stream stream;
    final Sender sender;
    final FrameMaker maker;
    private final long periodNs;
    private final long[] events;
    private final long[] ready;
    private int head;
    private int count;
    private long nextEvent;
    private long nextReady;
    boolean inBuffer;
    long sent;
    long lost;
    long worstNs;
    double sumNs;

    Waiting(Stream stream, Sender sender, FrameMaker maker, int depth) {
        this.stream = stream;
        this.sender = sender;
        this.maker = maker;
        this.periodNs = Math.max(1, Math.round(stream.periodNs() * (1 + sender.drift())));
        this.events = new long[depth];
        this.ready = new long[depth];
        this.nextEvent = stream.offsetNs();
        this.nextReady = nextEvent;
    }

    long nextReady() {
        return nextReady;
    }

    boolean waits() {
        return count > 0;
    }

    long headReady() {
        return ready[head];
    }

    long headEvent() {
        return events[head];
    }

    /** Takes the message that is due into the queue and sets the next one. */
    void queue(boolean powered, long jitterNs) {
        if (powered && count < events.length) {
            int tail = (head + count) % events.length;
            events[tail] = nextEvent;
            ready[tail] = nextReady;
            count++;
        } else {
            lost++;
        }
        nextEvent += periodNs;
        nextReady = Math.max(nextReady, nextEvent + jitterNs);
    }

    void through(long endNs) {
        long response = endNs - events[head];
        worstNs = Math.max(worstNs, response);
        sumNs += response;
        sent++;
        head = (head + 1) % events.length;
        count--;
        inBuffer = false;
    }

    /** A node without power forgets what waited. */
    void forget() {
        lost += count;
        count = 0;
        inBuffer = false;
    }

    StreamFigures figures() {
        return new StreamFigures(sent, lost, worstNs, sent == 0 ? 0 : sumNs / sent);
    }
}
