package servowright.app.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.worksheet.Case;

/**
 * Worked cases from a folder of YAML files, or from one file.
 *
 * @param cases    in the order of the file names, then of the text
 * @param problems what is wrong with the files; the cases cannot be trusted when there are any
 */
public record CaseFolder(List<Case> cases, List<Problem> problems) {
    public CaseFolder {
        cases = List.copyOf(cases);
        problems = List.copyOf(problems);
    }

    /** Reads every {@code .yaml} file below {@code folder}; never throws. */
    public static CaseFolder read(Path folder) {
        List<Case> cases = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        boolean single = Files.isRegularFile(folder);
        for (Path file : single ? List.of(folder) : files(folder, problems)) {
            Path within = single ? folder.getFileName() : folder.relativize(file);
            String name = within.toString().replace('\\', '/');
            TextFile.read(file, name, problems::add)
                    .ifPresent(text -> CaseText.read(name, text, cases::add, problems::add));
        }
        return new CaseFolder(cases, problems);
    }

    private static List<Path> files(Path folder, List<Problem> problems) {
        try (Stream<Path> found = Files.walk(folder)) {
            List<Path> files = found.filter(p -> p.toString().endsWith(".yaml"))
                    .filter(Files::isRegularFile)
                    .sorted()
                    .toList();
            if (files.isEmpty()) {
                problems.add(missing(folder, "there is no case in it: no file ends in .yaml"));
            }
            return files;
        } catch (IOException | java.io.UncheckedIOException e) {
            problems.add(missing(folder, "there is no such folder or it cannot be read"));
            return List.of();
        }
    }

    private static Problem missing(Path folder, String statement) {
        return new Problem(
                Problem.Kind.MISSING_FILE, new Place(folder.toString(), 0, ""), "", statement, "", "Check its name.");
    }
}
