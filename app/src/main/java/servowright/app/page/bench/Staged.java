package servowright.app.page.bench;

import java.nio.file.Path;

/** A recording that was brought to the page and is not yet kept. */
public record Staged(String id, String name, Path file) {}
