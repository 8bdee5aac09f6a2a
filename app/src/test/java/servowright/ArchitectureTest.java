package servowright;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static com.tngtech.archunit.library.plantuml.rules.PlantUmlArchCondition.Configuration.consideringOnlyDependenciesInDiagram;
import static com.tngtech.archunit.library.plantuml.rules.PlantUmlArchCondition.adhereToPlantUmlDiagram;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The drawing docs/architecture.puml is the rule. */
class ArchitectureTest {
    private static final Path DRAWING =
            Path.of(System.getProperty("servowright.root", ".."), "docs", "architecture.puml");
    private static final JavaClasses ALL = new ClassFileImporter()
            .withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("servowright");
    private static final JavaClasses ENGINE = ALL.that(resideInAPackage("servowright.engine.."));

    @Test
    void code_follows_the_drawing() throws IOException {
        classes()
                .should(adhereToPlantUmlDiagram(DRAWING.toUri().toURL(), consideringOnlyDependenciesInDiagram()))
                .check(ALL);
    }

    @Test
    void every_package_is_in_the_drawing_and_enough_classes_were_seen() throws IOException {
        Set<String> drawn = new TreeSet<>();
        Matcher m = Pattern.compile("<<([\\w.]+?)(?:\\.\\.)?>>").matcher(Files.readString(DRAWING));
        while (m.find()) {
            drawn.add(m.group(1));
        }
        Set<String> written =
                ALL.stream().map(c -> part(c.getPackageName())).collect(Collectors.toCollection(TreeSet::new));
        assertThat(written).isEqualTo(drawn);
        assertThat(ENGINE.size()).isGreaterThan(150);
    }

    /** Subpackages belong to the part they lie in: servowright.engine.worksheet.x to servowright.engine.worksheet. */
    private static String part(String name) {
        String[] words = name.split("\\.");
        return String.join(".", java.util.Arrays.copyOf(words, Math.min(words.length, 3)));
    }

    @Test
    void the_engine_touches_no_world() {
        noClasses()
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("java.nio.file..", "java.net..", "java.sql..", "tools.jackson..")
                .orShould()
                .dependOnClassesThat(describe(
                        "open files",
                        (JavaClass c) -> c.getName().startsWith("java.io.File")
                                || c.getName().equals("java.io.RandomAccessFile")))
                .orShould()
                .callMethodWhere(describe(
                        "the time is read from the clock",
                        call -> call.getTargetOwner().getPackageName().startsWith("java.time")
                                && call.getName().equals("now")))
                .orShould()
                .callMethod(System.class, "nanoTime")
                .orShould()
                .callMethod(System.class, "currentTimeMillis")
                .orShould()
                .callMethod(Math.class, "random")
                .because("the same input must give the same answer anywhere")
                .check(ENGINE);
        NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.check(ENGINE);
    }

    @Test
    void there_are_no_cycles() {
        slices().matching("servowright.engine.(*)..").should().beFreeOfCycles().check(ALL);
        slices().matching("servowright.app.(*)..").should().beFreeOfCycles().check(ALL);
    }

    @Test
    void third_party_mathematics_stays_behind_numeric() {
        noClasses()
                .that()
                .resideOutsideOfPackage("servowright.engine.numeric..")
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage("org.hipparchus..")
                .check(ALL);
    }

    @Test
    void physics_packages_do_not_know_one_another() {
        Set<String> physics = Set.of("motor", "power", "thermal", "control", "motion", "encoder", "bus");
        for (String one : physics) {
            String[] others = physics.stream()
                    .filter(p -> !p.equals(one))
                    .map(p -> "servowright.engine." + p + "..")
                    .toArray(String[]::new);
            noClasses()
                    .that()
                    .resideInAPackage("servowright.engine." + one + "..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(others)
                    .allowEmptyShould(true)
                    .check(ALL);
        }
    }
}
