package servowright.app.input.form;

import java.util.List;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.BusSignal.ByteOrder;
import servowright.engine.machine.BusSignal.Sign;
import servowright.engine.machine.ControllerFigure;
import servowright.engine.machine.IdScheme;
import servowright.engine.machine.MessageFigure;
import servowright.engine.machine.SignalFigure;
import servowright.engine.machine.StoppedQueue;

/** What may stand under the bus of a machine. */
final class BusForm {
    private static final String IDENTIFIER = "0[xX][01]?[0-9a-fA-F]{1,7}";

    private BusForm() {}

    static Shape.Group bus() {
        return Forms.group(
                Forms.figures(BusFigure.values()),
                List.of(
                        Field.of(
                                "ids",
                                "how messages without an identifier get one",
                                "predefined connection set",
                                Forms.choice(IdScheme.values(), IdScheme::words)),
                        Field.of(
                                "commands_while_stopped",
                                "what becomes of commands that wait while the axes are stopped",
                                "dropped",
                                Forms.choice(StoppedQueue.values(), StoppedQueue::words)),
                        Field.group(
                                "messages",
                                "every further message under a name of your own; \"lift command\" replaces that of the"
                                        + " axis lift",
                                new Shape.Named("message", "messages", message())),
                        Field.group(
                                "controllers",
                                "bit timing of a node under its name: an axis, host, or another",
                                new Shape.Named(
                                        "controller",
                                        "controllers",
                                        Forms.group(Forms.figures(ControllerFigure.values()))))));
    }

    static Shape.Group capture() {
        Field recording = Field.of(
                "recording",
                "file with the capture (candump, pcap, pcapng), inside the folder of the machine",
                "recordings/bus-patrol.log",
                Shape.Words.any());
        Field which = Field.of("interface", "which of its buses; without it the busiest", "can0", Shape.Words.any());
        Field signals = Field.group(
                "signals",
                "numbers in the data, each under a name of your own",
                new Shape.Named("signal", "signals", signal()));
        return Forms.group(List.of(recording.needed(), which, signals));
    }

    private static Shape.Group signal() {
        Field id = Field.of("id", "identifier of its message", "0x181", Shape.Words.like(IDENTIFIER, "0x181"));
        Field scale = Field.of("scale", "what one count is", "0.1 rpm", Shape.Words.any());
        return Forms.group(
                List.of(id.needed()),
                Forms.figures(SignalFigure.values()),
                List.of(
                        Field.of(
                                "order",
                                "which byte comes first; without it the low one",
                                "low byte first",
                                Forms.choice(ByteOrder.values(), ByteOrder::words)),
                        Field.of(
                                "sign",
                                "whether it can be negative; without it it can",
                                "signed",
                                Forms.choice(Sign.values(), Sign::words)),
                        scale.needed(),
                        Field.of("offset", "what no count is", "-40 degC", Shape.Words.any()),
                        Field.of(
                                "rate_of",
                                "the signal that this one is the rate of, to check their scales",
                                "left position",
                                Shape.Words.any())));
    }

    private static Shape.Group message() {
        return Forms.group(
                List.of(
                        Field.of("from", "node that sends it", "host", Shape.Words.any()),
                        Field.of("id", "identifier", "0x321", Shape.Words.like(IDENTIFIER, "0x321"))),
                Forms.figures(MessageFigure.values()));
    }
}
