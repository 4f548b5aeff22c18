package rootcast.app.demo;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.properties.CanBeAnnotated.Predicates;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import jakarta.persistence.Entity;
import java.time.Clock;
import java.time.InstantSource;
import java.util.Set;

/** What the demo may lean on. That the application does not lean on the demo is held by the class path. */
@AnalyzeClasses(packages = "rootcast", importOptions = DoNotIncludeTests.class)
class DemoArchitectureTest {

    /** Capabilities whose use cases its facts go through, and what serves them all. */
    private static final Set<String> MAY_USE = Set.of(
            "demo",
            "rounds",
            "availability",
            "ledger",
            "climate",
            "crop",
            "site",
            "snapshot",
            "people",
            "once",
            "problem",
            "wiring");

    /** Seen red on DemoRun with a field of type rootcast.app.board.LiveBoard. */
    @ArchTest
    static final ArchRule theDemoUsesOnlyWhatItTells = noClasses()
            .that()
            .resideInAPackage("rootcast.app.demo..")
            .should()
            .dependOnClassesThat(DescribedPredicate.describe(
                    "belong to another capability",
                    type -> type.getPackageName().startsWith("rootcast.app.")
                            && !MAY_USE.contains(type.getPackageName().split("\\.")[2])));

    /** Seen red on rootcast.app.demo.util. */
    @ArchTest
    static final ArchRule itHasOneRoomAndADoor = classes()
            .that()
            .resideInAPackage("rootcast.app.demo..")
            .should()
            .resideInAnyPackage("rootcast.app.demo", "rootcast.app.demo.rest");

    /** Seen red on DemoRun with a field of type jakarta.ws.rs.core.Response. */
    @ArchTest
    static final ArchRule httpStaysAtTheDoor = noClasses()
            .that()
            .resideInAPackage("rootcast.app.demo")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("jakarta.ws.rs..", "org.jboss.resteasy..", "io.vertx..");

    /** Seen red on UseCaseSink with a field of type rootcast.app.crop.store.CropProfileRow. */
    @ArchTest
    static final ArchRule itNamesNoRow = noClasses()
            .that()
            .resideInAPackage("rootcast.app.demo..")
            .should()
            .dependOnClassesThat(Predicates.annotatedWith(Entity.class))
            .because("its facts go through the use cases that people's entries go through");

    /** Seen red on {@code Instant.now()} in DemoRun. */
    @ArchTest
    static final ArchRule timeIsGiven = noClasses()
            .that()
            .resideInAPackage("rootcast.app.demo..")
            .should()
            .accessTargetWhere(DescribedPredicate.describe("the clock is read", DemoArchitectureTest::readsTheClock));

    private static boolean readsTheClock(JavaAccess<?> access) {
        JavaClass owner = access.getTargetOwner();
        String method = access.getName();
        return owner.getPackageName().equals("java.time") && method.equals("now")
                || (owner.isEquivalentTo(Clock.class) || owner.isEquivalentTo(InstantSource.class))
                        && (method.startsWith("system") || method.startsWith("tick"))
                || owner.isEquivalentTo(System.class)
                        && Set.of("currentTimeMillis", "nanoTime").contains(method);
    }
}
