package servowright.app.view;

import java.util.List;
import servowright.engine.known.Place;

/**
 * A part of the machine as declared.
 *
 * @param kind supply, motor, drive, sensor, axis, duty or bus
 * @param name as the user calls it; may be empty where there is only one
 */
public record PartView(Kind kind, String name, List<Row> rows) {
    public enum Kind {
        SURROUNDINGS("surroundings"),
        SUPPLY("supply"),
        BUS("bus"),
        MOTOR("motor"),
        DRIVE("drive"),
        SENSOR("sensor"),
        AXIS("axis"),
        DUTY("duty");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** As it is shown. */
        public String words() {
            return words;
        }
    }

    /**
     * A line of a table.
     *
     * @param label what it is
     * @param text  as somebody wrote it
     * @param place where; may be empty
     * @param path  the keys leading there, by which it can be changed; may be empty
     */
    public record Row(String label, String text, String place, String path) {
        Row(String label, String text, Place place) {
            this(label, text, place.text(), place.path());
        }

        Row(String label, String text) {
            this(label, text, "", "");
        }
    }

    public PartView {
        rows = List.copyOf(rows);
    }
}
