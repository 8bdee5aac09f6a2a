package servowright.app.input;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import servowright.app.input.form.Value.Part;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusController;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.BusMessage;
import servowright.engine.machine.BusSignal;
import servowright.engine.machine.BusSignal.ByteOrder;
import servowright.engine.machine.BusSignal.Sign;
import servowright.engine.machine.ControllerFigure;
import servowright.engine.machine.IdScheme;
import servowright.engine.machine.MessageFigure;
import servowright.engine.machine.SignalFigure;
import servowright.engine.machine.StoppedQueue;

/** Makes the bus from the values that were found good. */
final class BusBinder {
    private BusBinder() {}

    static Bus bus(Part part) {
        Map<String, BusMessage> messages = new LinkedHashMap<>();
        part.part("messages").parts().forEach((name, p) -> messages.put(name, message(name, p)));
        Map<String, BusController> controllers = new LinkedHashMap<>();
        part.part("controllers")
                .parts()
                .forEach((node, p) ->
                        controllers.put(node, new BusController(node, p.place(), p.figures(ControllerFigure.class))));
        return new Bus(
                part.figures(BusFigure.class),
                MachineBinder.choice(part, "ids", IdScheme.values(), IdScheme::words),
                MachineBinder.choice(part, "commands_while_stopped", StoppedQueue.values(), StoppedQueue::words),
                messages,
                controllers);
    }

    /** Signals in the data of a capture. */
    static List<BusSignal> signals(Part part) {
        List<BusSignal> all = new ArrayList<>();
        part.parts()
                .forEach((name, p) -> identifier(p)
                        .ifPresent(id -> p.words("scale")
                                .ifPresent(scale -> all.add(new BusSignal(
                                        name,
                                        p.place(),
                                        id,
                                        p.figures(SignalFigure.class),
                                        MachineBinder.choice(p, "order", ByteOrder.values(), ByteOrder::words)
                                                .orElse(ByteOrder.LOW_FIRST),
                                        MachineBinder.choice(p, "sign", Sign.values(), Sign::words)
                                                .orElse(Sign.SIGNED),
                                        scale,
                                        p.words("offset"),
                                        p.words("rate_of"))))));
        return all;
    }

    private static OptionalInt identifier(Part p) {
        return p.words("id")
                .map(text -> OptionalInt.of(Integer.parseInt(text.substring(2), 16)))
                .orElse(OptionalInt.empty());
    }

    private static BusMessage message(String name, Part p) {
        return new BusMessage(name, p.place(), p.words("from"), identifier(p), p.figures(MessageFigure.class));
    }
}
