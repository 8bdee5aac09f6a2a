package servowright.app.input.schema;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import servowright.app.input.form.Forms;

/** The files under docs that are made from the forms. */
public final class SchemaFiles {
    private SchemaFiles() {}

    /** Content of every file, by its path below the root of the repository. */
    public static Map<String, String> all() {
        Map<String, String> files = new LinkedHashMap<>();
        files.put(
                "docs/schema/machine.schema.json",
                Schema.text("machine.yaml", "A machine of small brushless axes, as it is known.", Forms.machine()));
        files.put(
                "docs/schema/bench.schema.json",
                Schema.text("bench.yaml", "What was measured at the bench, and how.", Forms.bench()));
        files.put("docs/files.md", KeyTables.page());
        return files;
    }

    /**
     * Writes the files anew.
     *
     * @param args the root of the repository
     */
    public static void main(String[] args) throws IOException {
        for (Map.Entry<String, String> file : all().entrySet()) {
            Path path = Path.of(args[0]).resolve(file.getKey());
            Files.createDirectories(path.getParent());
            Files.writeString(path, file.getValue());
        }
    }
}
