package servowright.app.view;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import servowright.engine.bus.Message;
import servowright.engine.bus.ResponseTime;
import servowright.engine.machine.BusController;
import servowright.engine.machine.ControllerFigure;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.PlannedMessage;
import servowright.engine.quantity.Quantity;

/**
 * The traffic that a bus is to carry, as it is shown.
 *
 * @param load      share of the bus that all messages take in the worst case
 * @param leastLoad the same with the shortest frames
 * @param bit       length of a bit in arbitration
 * @param messages  highest priority first
 * @param clocks    controllers whose clock is stated
 */
public record BusPlanView(
        FigureText load, FigureText leastLoad, FigureText bit, List<MessageView> messages, List<ClockView> clocks) {
    /**
     * A message.
     *
     * @param period   or the shortest time between two, where nothing drives it
     * @param sends    longest time on the bus
     * @param load     share of the bus that it takes
     * @param bound    guaranteed worst case from its event to its arrival; absent without one
     * @param words    whether it arrives in time
     * @param used     share of the deadline that the bound takes, 0 to 1; 1 without a bound
     */
    public record MessageView(
            String name,
            String from,
            String id,
            int bytes,
            FigureText period,
            FigureText sends,
            FigureText load,
            FigureText deadline,
            Optional<FigureText> bound,
            String words,
            double used) {
        static MessageView of(PlannedMessage planned) {
            ResponseTime response = planned.response();
            Message message = response.message();
            boolean bounded = response.worstNs() != Long.MAX_VALUE;
            String words = switch (response.schedule()) {
                case MEETS_DEADLINE -> "in time";
                case LATE -> "late";
                case NO_BOUND -> "no bound";
            };
            return new MessageView(
                    planned.name(),
                    planned.from(),
                    String.format(Locale.ROOT, planned.extended() ? "0x%08X" : "0x%03X", planned.id()),
                    planned.bytes(),
                    time(message.periodNs()),
                    time(message.sendNs()),
                    share((double) message.sendNs() / message.periodNs()),
                    time(message.deadlineNs()),
                    bounded ? Optional.of(time(response.worstNs())) : Optional.empty(),
                    words,
                    bounded ? Math.min(1, (double) response.worstNs() / message.deadlineNs()) : 1);
        }

        /** Share of the deadline that the bound takes, counted in hundredths. */
        public String usedPercent() {
            return PlotSvg.number(100 * used);
        }
    }

    /** A controller and its clock as it was written. */
    public record ClockView(String node, String clock) {}

    public BusPlanView {
        messages = List.copyOf(messages);
        clocks = List.copyOf(clocks);
    }

    static BusPlanView of(Machine machine, BusPlan plan) {
        return new BusPlanView(
                share(plan.load()),
                share(plan.leastLoad()),
                FigureText.of(Quantity.of(plan.bitNs() * 1e-9, "s"), "us"),
                plan.messages().stream().map(MessageView::of).toList(),
                machine.bus().controllers().values().stream()
                        .flatMap(c -> clock(c).stream())
                        .toList());
    }

    private static Optional<ClockView> clock(BusController controller) {
        return controller
                .figures()
                .get(ControllerFigure.CLOCK)
                .map(d -> new ClockView(
                        controller.node(), FigureText.of(d.known(), "MHz").valueText()));
    }

    private static FigureText time(long ns) {
        return FigureText.of(Quantity.of(ns * 1e-9, "s"), "ms");
    }

    private static FigureText share(double share) {
        return FigureText.of(Quantity.number(share), "%");
    }
}
