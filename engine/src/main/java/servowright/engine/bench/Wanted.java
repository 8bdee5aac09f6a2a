package servowright.engine.bench;

import java.util.Locale;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.recording.Channel;

/**
 * A quantity that a test needs, from a channel or from readings.
 *
 * @param words  what the bench file calls it: {@code torque}
 * @param figure its key among the readings
 */
record Wanted(String words, ReadingFigure figure) {
    static final Wanted CURRENT = new Wanted("current", ReadingFigure.CURRENT);
    static final Wanted SPEED = new Wanted("speed", ReadingFigure.SPEED);
    static final Wanted TORQUE = new Wanted("torque", ReadingFigure.TORQUE);
    static final Wanted AFTER = new Wanted("after", ReadingFigure.AFTER);
    static final Wanted RESISTANCE = new Wanted("resistance", ReadingFigure.RESISTANCE);
    static final Wanted VOLTAGE = new Wanted("voltage", ReadingFigure.VOLTAGE);
    static final Wanted ANGLE = new Wanted("angle", ReadingFigure.ANGLE);
    static final Wanted HOUSING = new Wanted("housing", ReadingFigure.TEMPERATURE);
    static final Wanted FORCE = new Wanted("force", ReadingFigure.FORCE);

    /** With its article. */
    String one() {
        return ("aeiou".indexOf(words.charAt(0)) < 0 ? "a " : "an ") + words;
    }

    Dimension dimension() {
        return figure.key().dimension();
    }

    /** Whether a channel shows it, going by what the test says of the channel and by its unit. */
    boolean shownBy(Channel channel, String said) {
        boolean right =
                channel.unit().map(u -> u.dimension().equals(dimension())).orElse(false);
        String lower = said.toLowerCase(Locale.ROOT);
        return right && lower.contains(words) && !lower.contains("commanded") && !lower.contains("reference");
    }
}
