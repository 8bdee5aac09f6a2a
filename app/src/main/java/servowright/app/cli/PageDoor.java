package servowright.app.cli;

import java.nio.file.Path;

/** Opens the page of a machine. */
@FunctionalInterface
public interface PageDoor {
    /** A page that is being served until it is closed. */
    interface Served extends AutoCloseable {
        /** The address to open, with the key of this run. */
        String address();

        @Override
        void close();
    }

    /**
     * Serves a folder.
     *
     * @param port 0 for one that is free
     * @throws IllegalStateException if the port cannot be used
     */
    Served serve(Path folder, int port);
}
