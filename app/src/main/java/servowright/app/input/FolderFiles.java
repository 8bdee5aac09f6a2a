package servowright.app.input;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Spelling;

/** Finds the files that bench.yaml names, all of them inside the folder of the machine. */
final class FolderFiles {
    private final Path dir;
    private final Problems problems;

    FolderFiles(Path dir, Problems problems) {
        this.dir = dir.toAbsolutePath().normalize();
        this.problems = problems;
    }

    /** The file of that name, or a problem at the place where it is named. */
    Optional<Path> find(String file, Place place) {
        try {
            Path path = dir.resolve(file).normalize();
            if (Path.of(file).isAbsolute() || !path.startsWith(dir)) {
                return outside(file, place);
            }
            if (Files.exists(path) && !Files.isRegularFile(path)) {
                return unreadable(file, place, " is no file of text", "Name the file that holds the recording.");
            }
            if (!Files.exists(path)) {
                return missing(file, path, place);
            }
            return path.toRealPath().startsWith(dir.toRealPath()) ? Optional.of(path) : outside(file, place);
        } catch (InvalidPathException e) {
            return missing(file, dir, place);
        } catch (IOException e) {
            return unreadable(file, place, " cannot be read", "Check its rights.");
        }
    }

    private Optional<Path> unreadable(String file, Place place, String statement, String remedy) {
        problems.add(Problem.Kind.UNREADABLE, place, file, Problems.quoted(file) + statement, "", remedy);
        return Optional.empty();
    }

    private Optional<Path> outside(String file, Place place) {
        problems.add(
                Problem.Kind.NOT_ALLOWED_HERE,
                place,
                file,
                Problems.quoted(file) + " lies outside the folder of the machine",
                "a path below the folder",
                "Put the recording into the folder, so that the folder holds everything.");
        return Optional.empty();
    }

    private Optional<Path> missing(String file, Path path, Place place) {
        String remedy = file.contains("\\")
                ? "Write / between folders."
                : nearest(path).map(n -> "Nearest: " + n + ".").orElse("Check its name and folder.");
        problems.add(Problem.Kind.MISSING_FILE, place, file, "there is no file " + Problems.quoted(file), "", remedy);
        return Optional.empty();
    }

    /** The file in the same folder whose name comes nearest. */
    private Optional<String> nearest(Path path) {
        Path folder = path.getParent();
        if (folder == null || !Files.isDirectory(folder) || !folder.startsWith(dir)) {
            return Optional.empty();
        }
        List<String> names = new ArrayList<>();
        try (Stream<Path> files = Files.list(folder)) {
            files.limit(1000).map(p -> String.valueOf(p.getFileName())).forEach(names::add);
        } catch (IOException e) {
            return Optional.empty();
        }
        return Spelling.nearest(Problems.shortened(String.valueOf(path.getFileName())), names)
                .map(n -> dir.relativize(folder.resolve(n)).toString().replace('\\', '/'));
    }
}
