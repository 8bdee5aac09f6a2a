package servowright;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.MethodTree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.tools.JavaCompiler;
import javax.tools.StandardJavaFileManager;
import javax.tools.ToolProvider;
import org.junit.jupiter.api.Test;

/** Rules of the house that a compiler does not know. */
class HouseRulesTest {
    private static final int LINES_OF_A_FILE = 400;
    private static final int LINES_OF_A_METHOD = 40;
    private static final int LINES_OF_A_TEST = 50; // data stand in tests
    private static final Pattern SAYS_NOTHING = Pattern.compile(
            "(Util|Utils|Helper|Helpers|Manager|Common|Misc|Impl)$|^(Util|Helper|Misc)|^Common(?!Mode)");
    private static final Path ROOT = Path.of(System.getProperty("servowright.root", ".."));

    private static List<Path> sources() throws IOException {
        List<Path> all = new ArrayList<>();
        for (String module : List.of("engine", "app", "benchmarks")) {
            try (Stream<Path> files = Files.walk(ROOT.resolve(module))) {
                files.filter(p -> !p.startsWith(ROOT.resolve(module).resolve("target")))
                        .filter(p -> p.toString().endsWith(".java"))
                        .forEach(all::add);
            }
        }
        return all;
    }

    @Test
    void no_file_is_longer_than_a_few_screens() throws IOException {
        List<String> tooLong = new ArrayList<>();
        for (Path file : sources()) {
            long lines = Files.readAllLines(file).size();
            if (lines > LINES_OF_A_FILE) {
                tooLong.add(ROOT.relativize(file) + ": " + lines);
            }
        }
        assertThat(tooLong).isEmpty();
    }

    @Test
    void no_method_is_longer_than_a_screen() throws IOException {
        List<String> tooLong = new ArrayList<>();
        JavaCompiler compiler = ToolProvider.getSystemJavaCompiler();
        try (StandardJavaFileManager files = compiler.getStandardFileManager(null, null, null)) {
            JavacTask task = (JavacTask) compiler.getTask(
                    null, files, d -> {}, List.of("-proc:none"), null, files.getJavaFileObjectsFromPaths(sources()));
            SourcePositions positions = Trees.instance(task).getSourcePositions();
            for (CompilationUnitTree unit : task.parse()) {
                unit.accept(new LongMethods(unit, positions, tooLong), null);
            }
        }
        assertThat(tooLong).isEmpty();
    }

    @Test
    void names_say_something() throws IOException {
        assertThat(sources())
                .map(p -> p.getFileName().toString().replace(".java", ""))
                .noneMatch(name -> SAYS_NOTHING.matcher(name).find());
    }

    /** Finds methods with too many lines between their first and their last brace. */
    private static final class LongMethods extends TreeScanner<Void, Void> {
        private final CompilationUnitTree unit;
        private final SourcePositions positions;
        private final List<String> found;
        private String type = "";

        LongMethods(CompilationUnitTree unit, SourcePositions positions, List<String> found) {
            this.unit = unit;
            this.positions = positions;
            this.found = found;
        }

        @Override
        public Void visitClass(ClassTree tree, Void nothing) {
            String outer = type;
            type = tree.getSimpleName().toString();
            super.visitClass(tree, null);
            type = outer;
            return null;
        }

        @Override
        public Void visitMethod(MethodTree tree, Void nothing) {
            if (tree.getBody() != null) {
                LineMap map = unit.getLineMap();
                long from = map.getLineNumber(positions.getStartPosition(unit, tree.getBody()));
                long to = map.getLineNumber(positions.getEndPosition(unit, tree.getBody()));
                boolean test = unit.getSourceFile().getName().contains("/src/test/");
                if (to - from + 1 > (test ? LINES_OF_A_TEST : LINES_OF_A_METHOD)) {
                    found.add(type + "." + tree.getName() + ": " + (to - from + 1));
                }
            }
            return super.visitMethod(tree, null);
        }
    }
}
