package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;
import servowright.engine.recording.Spread;

/**
 * How a recording was understood.
 *
 * @param extent  rows, interval and length in words
 * @param remarks what was concluded and found, sentences
 */
public record RecordingView(String name, String extent, List<ChannelView> channels, List<String> remarks) {
    /**
     * One channel.
     *
     * @param unit  as the file states it
     * @param range least and greatest number
     */
    public record ChannelView(String name, String unit, String range) {}

    public RecordingView {
        channels = List.copyOf(channels);
        remarks = List.copyOf(remarks);
    }

    public static RecordingView of(Recording recording) {
        return new RecordingView(
                recording.name(),
                extent(recording),
                recording.channels().stream().map(RecordingView::channel).toList(),
                recording.remarks().stream().map(RecordingView::remark).toList());
    }

    private static String extent(Recording recording) {
        Clock clock = recording.clock();
        List<String> said = new ArrayList<>();
        said.add(recording.count() + (recording.count() == 1 ? " row" : " rows"));
        if (!clock.timed()) {
            said.add("in an order without times");
        } else if (recording.count() > 1) {
            said.add(seconds(clock.intervalS()) + " apart");
            if (recording.segmentCount() > 1) {
                said.add(recording.segmentCount() + " segments");
            } else {
                said.add(seconds(clock.timeS(recording.count() - 1) - clock.timeS(0)) + " long");
            }
        }
        return String.join(", ", said);
    }

    private static String seconds(double s) {
        return Double.isFinite(s) ? FigureText.of(Quantity.of(s, "s"), "").text() : "unknown";
    }

    private static ChannelView channel(Channel channel) {
        Spread spread = channel.spread();
        String unit = channel.unit().map(Unit::symbol).orElse("not stated");
        if (!Double.isFinite(spread.least())) {
            return new ChannelView(channel.name(), unit, "no numbers");
        }
        return new ChannelView(
                channel.name(), unit, text(channel, spread.least()) + " to " + text(channel, spread.most()));
    }

    private static String text(Channel channel, double si) {
        Quantity value =
                channel.unit().map(u -> new Quantity(si, u.dimension())).orElseGet(() -> Quantity.number(si));
        return FigureText.of(value, channel.unit().map(Unit::symbol).orElse("")).text();
    }

    private static String remark(Remark remark) {
        StringBuilder says = new StringBuilder(remark.where()).append(": ").append(remark.text());
        if (remark.count() > 0) {
            says.append(", ").append(remark.count()).append(remark.count() == 1 ? " time" : " times");
        }
        if (remark.firstRow() > 0) {
            says.append(", first in row ").append(remark.firstRow());
        }
        remark.handled().ifPresent(h -> says.append("; ").append(h));
        return says.append('.').toString();
    }
}
