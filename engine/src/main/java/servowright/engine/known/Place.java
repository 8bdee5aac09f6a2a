package servowright.engine.known;

/**
 * Where something stands in the user's files.
 *
 * @param file as the user knows it, relative to the machine's folder
 * @param line counted from 1; 0 when the whole file is meant
 * @param path the keys leading there, for example {@code axes / tilt / mount / gap}; may be empty
 */
public record Place(String file, int line, String path) {
    /** {@code machine.yaml:41}, or only the file. */
    public String text() {
        return line > 0 ? file + ":" + line : file;
    }
}
