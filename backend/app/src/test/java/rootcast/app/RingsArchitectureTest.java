package rootcast.app;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import jakarta.persistence.Entity;
import java.time.Clock;
import java.time.InstantSource;

/**
 * What holds inside of every capability: {@code rest → use case → core ← store}, one place for errors and one for the
 * clock.
 *
 * <p>ArchUnit fails a rule that matches no class at all (its default, left on). What each rule was seen red on stands
 * beside it.
 */
@AnalyzeClasses(packages = "rootcast", importOptions = AppArchitectureTest.WrittenHere.class)
class RingsArchitectureTest {

    /** Seen red on a use case (rootcast.app.ledger.StickBatch) with a field of type EntryResource, and on a store with one. */
    @ArchTest
    static final ArchRule onlyRestUsesRest = noClasses()
            .that()
            .resideOutsideOfPackage("rootcast.app..rest..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("rootcast.app..rest..")
            .because("a use case does not know how it was asked");

    /** Seen red on a {@code @Path} on RecordEntry and on a Response returned by StickBatch. */
    @ArchTest
    static final ArchRule httpStaysAtTheEdge = noClasses()
            .that()
            .resideOutsideOfPackages(
                    "rootcast.app..rest..",
                    "rootcast.app.climate.mqtt..",
                    "rootcast.app.problem..",
                    "rootcast.app.people..",
                    "rootcast.app.wiring..")
            .and()
            .doNotHaveFullyQualifiedName("rootcast.app.once.WriteSetup")
            .should()
            .dependOnClassesThat()
            .resideInAnyPackage("jakarta.ws.rs..", "org.jboss.resteasy..", "io.vertx..")
            .because("use cases and stores outlive the way in");

    /** Seen red on LiveSupply with a field of type CustomerOrderRow and on BoardResource with one of type EntryRow. */
    @ArchTest
    static final ArchRule aRowIsNamedOnlyWhereItIsStored = classes()
            .that()
            .areAnnotatedWith(Entity.class)
            .should()
            .onlyHaveDependentClassesThat(shareItsStore())
            .because("what a table looks like is nobody else's business");

    /** Seen red on an {@code @Entity} in rootcast.app.board. */
    @ArchTest
    static final ArchRule rowsLiveInStores = classes()
            .that()
            .areAnnotatedWith(Entity.class)
            .should()
            .resideInAnyPackage("rootcast.app..store..", "rootcast.app.once")
            .andShould()
            .haveSimpleNameEndingWith("Row");

    /** Seen red on PlaceOrder with a field of type Projector. */
    @ArchTest
    static final ArchRule nothingDependsOnFlow = noClasses()
            .that()
            .resideOutsideOfPackage("rootcast.app.flow..")
            .should()
            .dependOnClassesThat()
            .resideInAPackage("rootcast.app.flow..")
            .because("the main path reads facts; no fact waits for it");

    /** Seen red on {@code Response.serverError()} in OrderResource and on a {@code WebApplicationException} thrown there. */
    @ArchTest
    static final ArchRule onlyProblemBuildsErrors = noClasses()
            .that()
            .resideOutsideOfPackage("rootcast.app.problem..")
            .should()
            .dependOnClassesThat(areExceptionsOfTheHttpLayer())
            .orShould()
            .callMethod(jakarta.ws.rs.core.Response.class, "serverError")
            .because("there is one table from refusal to status and one body");

    /** Seen red on {@code Instant.now()} in StickBatch, {@code LocalDate.now()} in BoardQuery and {@code Instant::now}. */
    @ArchTest
    static final ArchRule onlyWiringReadsTheClock = classes()
            .that()
            .resideOutsideOfPackage("rootcast.app.wiring..")
            .should(neverReadTheClock())
            .because("time is given, so that every hour can be tested");

    private static DescribedPredicate<JavaClass> areExceptionsOfTheHttpLayer() {
        return DescribedPredicate.describe(
                "are exceptions of the HTTP layer",
                type -> type.getPackageName().startsWith("jakarta.ws.rs")
                        && type.isAssignableTo(RuntimeException.class));
    }

    private static DescribedPredicate<JavaClass> shareItsStore() {
        return DescribedPredicate.describe(
                "reside in a store", type -> type.getPackageName().matches("rootcast\\.app(\\.\\w+\\.store|\\.once)"));
    }

    private static ArchCondition<JavaClass> neverReadTheClock() {
        return new ArchCondition<>("never read the clock") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                for (JavaAccess<?> access : type.getAccessesFromSelf()) {
                    JavaClass owner = access.getTargetOwner();
                    String method = access.getName();
                    boolean clock = owner.getPackageName().equals("java.time") && method.equals("now")
                            || (owner.isEquivalentTo(Clock.class) || owner.isEquivalentTo(InstantSource.class))
                                    && (method.startsWith("system") || method.startsWith("tick"))
                            || owner.isEquivalentTo(System.class) && method.equals("currentTimeMillis")
                            // how long somebody has waited: bookkeeping that no figure depends on
                            || owner.isEquivalentTo(System.class)
                                    && method.equals("nanoTime")
                                    && !type.getPackageName().equals("rootcast.app.snapshot")
                            || owner.isEquivalentTo(java.util.Date.class)
                                    && method.equals("<init>")
                                    && access.getDescription().contains("<init>()");
                    if (clock) {
                        events.add(SimpleConditionEvent.violated(access, access.getDescription()));
                    }
                }
            }
        };
    }
}
