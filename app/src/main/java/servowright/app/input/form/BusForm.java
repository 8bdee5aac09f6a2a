package servowright.app.input.form;

import java.util.List;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.ControllerFigure;
import servowright.engine.machine.IdScheme;
import servowright.engine.machine.MessageFigure;
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

    private static Shape.Group message() {
        return Forms.group(
                List.of(
                        Field.of("from", "node that sends it", "host", Shape.Words.any()),
                        Field.of("id", "identifier", "0x321", Shape.Words.like(IDENTIFIER, "0x321"))),
                Forms.figures(MessageFigure.values()));
    }
}
