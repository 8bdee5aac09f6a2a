package servowright.engine.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Watches a capture go by and says what it showed. Holds the same amount for any number of frames. */
public final class Traffic implements FrameSink {
    /** More buses share the last place. */
    private static final int MOST_BUSES = 8;

    /** Without a rate the fastest that classical CAN allows decides what a bus cannot have done: 1 Mbit/s. */
    private static final BitTimes FASTEST = new BitTimes(1000, 1000);

    private static final BitTimes BITS = new BitTimes(1, 1);

    private final Optional<BitTimes> times;
    private final @Nullable Watch[] buses = new Watch[MOST_BUSES];
    private final WireLength wire = new WireLength();
    private long lost;

    private Traffic(Optional<BitTimes> times) {
        this.times = times;
    }

    /** Watches a bus whose rates are known. */
    public static Traffic at(BitTimes times) {
        return new Traffic(Optional.of(times));
    }

    /** Watches a bus of unknown rate: bits are counted instead of time, and there is no load. */
    public static Traffic atUnknownRate() {
        return new Traffic(Optional.empty());
    }

    @Override
    public void frame(Frame frame) {
        int bus = Math.min(frame.bus(), MOST_BUSES - 1);
        Watch watch = buses[bus];
        if (watch == null) {
            watch = new Watch(bus);
            buses[bus] = watch;
        }
        if (frame.is(Frame.ERROR)) {
            watch.errors.report(frame);
        } else {
            wire.measure(frame);
            watch.frame(frame, wire);
        }
    }

    @Override
    public void lost(long frames) {
        lost += frames;
    }

    /** Frames that the recording computer says it lost. */
    public long lost() {
        return lost;
    }

    /** What was seen, by bus. */
    public List<BusTraffic> seen() {
        List<BusTraffic> all = new ArrayList<>();
        for (Watch watch : buses) {
            if (watch != null) {
                all.add(watch.traffic());
            }
        }
        return all;
    }

    /** One bus. */
    private final class Watch {
        private final int bus;
        private final LoadMeter load = new LoadMeter();
        private final LoadSeries series = new LoadSeries();
        private final IdTable identifiers;
        private final StampWatch stamps = new StampWatch();
        private final ErrorWatch errors = new ErrorWatch();
        private final NodeWatch nodes;
        private long frames;
        private long fdFrames;
        private long timed;
        private long untimedHeld;

        Watch(int bus) {
            this.bus = bus;
            this.identifiers = new IdTable(bus);
            this.nodes = new NodeWatch(bus);
        }

        void frame(Frame frame, WireLength wire) {
            frames++;
            fdFrames += frame.is(Frame.FD) ? 1 : 0;
            long held = wire.nanoseconds(times.orElse(BITS));
            if (frame.timed()) {
                timed++;
                long leastNs = times.isPresent() ? held : frame.is(Frame.FD) ? 0 : wire.nanoseconds(FASTEST);
                if (!stamps.frame(frame.timeNs(), leastNs)) {
                    load.restart();
                    identifiers.restart();
                }
                load.frame(frame.timeNs(), held, IdTable.key(frame));
                series.frame(frame.timeNs(), held);
            } else {
                untimedHeld += held;
            }
            IdTraffic.Gathering one = identifiers.of(frame);
            if (one != null) {
                one.frame(frame, held);
            }
            if (!frame.is(Frame.EXTENDED) && !frame.is(Frame.REMOTE)) {
                nodes.frame(frame);
            }
            errors.frame();
        }

        BusTraffic traffic() {
            boolean loads = times.isPresent() && timed > 0;
            return new BusTraffic(
                    bus,
                    frames,
                    fdFrames,
                    timed,
                    load.totalNs() + untimedHeld,
                    loads ? load.loads() : List.of(),
                    series.curve(),
                    loads ? load.fullest() : Timeline.NONE,
                    identifiers.traffic(),
                    identifiers.beyond(),
                    stamps.stamps(),
                    errors.errors(),
                    nodes.nodes());
        }
    }
}
