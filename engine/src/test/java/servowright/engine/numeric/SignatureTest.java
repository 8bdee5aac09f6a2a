package servowright.engine.numeric;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SignatureTest {
    private static final JavaClasses NUMERIC = new ClassFileImporter()
            .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
            .importPackages("servowright.engine.numeric");

    @Test
    void no_public_signature_shows_a_type_from_elsewhere() {
        List<JavaCodeUnit> open = NUMERIC.stream()
                .filter(c -> c.getModifiers().contains(JavaModifier.PUBLIC))
                .flatMap(c -> c.getCodeUnits().stream())
                .filter(u -> u.getModifiers().contains(JavaModifier.PUBLIC))
                .toList();
        assertThat(open).hasSizeGreaterThan(100);
        assertThat(open)
                .filteredOn(unit -> Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream())
                        .flatMap(type -> involved(type))
                        .anyMatch(name -> name.contains("hipparchus")))
                .isEmpty();
    }

    private static Stream<String> involved(JavaType type) {
        return type.getAllInvolvedRawTypes().stream().map(c -> c.getFullName());
    }

    @Test
    void nothing_of_the_engine_is_needed() {
        assertThat(NUMERIC.stream()
                        .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                        .map(d -> d.getTargetClass().getBaseComponentType())
                        .filter(resideInAnyPackage("servowright..")
                                .and(not(resideInAnyPackage("servowright.engine.numeric.."))))
                        .toList())
                .isEmpty();
    }
}
