package servowright.app.view;

import java.util.List;

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
     */
    public record Row(String label, String text, String place) {}

    public PartView {
        rows = List.copyOf(rows);
    }
}
