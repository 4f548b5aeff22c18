package rootcast.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import jakarta.validation.Constraint;
import java.lang.annotation.Annotation;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the wire shapes demand by annotation is told as a code, found by walking the shapes and not by a list kept here. */
class ConstraintFaultsTest {

    @Test
    void everyAnnotationOfAWireShapeHasALine() {
        Set<Annotation> demanded = new LinkedHashSet<>();
        JavaClasses shapes = new ClassFileImporter()
                .withImportOption(new ImportOption.DoNotIncludeTests())
                .importPackages("rootcast.app");
        for (JavaClass shape : shapes) {
            if (shape.isRecord()) {
                for (RecordComponent component : shape.reflect().getRecordComponents()) {
                    demanded(component.getAccessor().getAnnotations(), demanded);
                }
            }
        }

        assertThat(demanded).hasSizeGreaterThan(10);
        demanded.forEach(each -> assertThat(
                        ConstraintFaults.errorOf("field", each, "sent").message())
                .as("%s", each)
                .isNotBlank());
    }

    private static void demanded(Annotation[] annotations, Set<Annotation> demanded) {
        for (Annotation each : annotations) {
            if (each.annotationType().isAnnotationPresent(Constraint.class)) {
                demanded.add(each);
            }
        }
    }
}
