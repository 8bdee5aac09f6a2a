package servowright.engine.prediction;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusController;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.BusMessage;
import servowright.engine.machine.ControllerFigure;
import servowright.engine.machine.MessageFigure;
import servowright.engine.machine.StoppedQueue;

/** The bus of the invented machine; everything holds as it stands. */
final class InventedBus {
    private final Map<BusFigure, List<String>> figures = new EnumMap<>(BusFigure.class);
    private final Map<String, BusMessage> messages = new LinkedHashMap<>();
    private final Map<String, BusController> controllers = new LinkedHashMap<>();
    private StoppedQueue stoppedQueue = StoppedQueue.DROPPED;

    InventedBus() {
        figure(BusFigure.RATE, "1 Mbit/s");
        figure(BusFigure.CABLE, "3 m");
        figure(BusFigure.CROSS_SECTION, "0.34 mm2");
        figure(BusFigure.STUB, "0.2 m");
        figure(BusFigure.TERMINATORS, "2");
        figure(BusFigure.GROUND_SHIFT, "0.2 V");
        figure(BusFigure.COMMAND_PERIOD, "2 ms");
        figure(BusFigure.FEEDBACK_PERIOD, "2 ms");
        figure(BusFigure.SYNC, "2 ms");
        figure(BusFigure.HEARTBEAT, "100 ms");
        figure(BusFigure.WATCHDOG, "20 ms");
        figure(BusFigure.RESTART, "100 ms");
        controller("host", 10, 5, 1, 1);
        controller(Invented.ARM, 10, 5, 1, 1);
    }

    void figure(BusFigure key, String... text) {
        figures.put(key, List.of(text));
    }

    void queue(StoppedQueue what) {
        stoppedQueue = what;
    }

    void message(String name, int id, String period) {
        messages.put(
                name,
                new BusMessage(
                        name,
                        Invented.place("bus / messages"),
                        Optional.of("host"),
                        OptionalInt.of(id),
                        Invented.figures(
                                MessageFigure.class, Map.of(MessageFigure.PERIOD, List.of(period)), "bus / messages")));
    }

    void controller(String node, int prescaler, int prop, int one, int two) {
        Map<ControllerFigure, List<String>> all = new EnumMap<>(ControllerFigure.class);
        all.put(ControllerFigure.CLOCK, List.of("80 MHz"));
        all.put(ControllerFigure.DEVIATION, List.of("50 ppm"));
        all.put(ControllerFigure.PRESCALER, List.of(Integer.toString(prescaler)));
        all.put(ControllerFigure.PROP, List.of(Integer.toString(prop)));
        all.put(ControllerFigure.PHASE_ONE, List.of(Integer.toString(one)));
        all.put(ControllerFigure.PHASE_TWO, List.of(Integer.toString(two)));
        all.put(ControllerFigure.JUMP, List.of("1"));
        controllers.put(
                node,
                new BusController(
                        node,
                        Invented.place("bus / controllers"),
                        Invented.figures(ControllerFigure.class, all, "bus / controllers / " + node)));
    }

    Bus declared() {
        return new Bus(
                Invented.figures(BusFigure.class, figures, "bus"),
                Optional.empty(),
                Optional.of(stoppedQueue),
                messages,
                controllers);
    }
}
