package rootcast.app;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import jakarta.persistence.Entity;
import java.time.Clock;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * How the application hangs together: {@code rest → use case → core ← store} inside a capability, and one direction
 * between them.
 *
 * <p>ArchUnit fails a rule that matches no class at all (its default, left on). What each rule was seen red on stands
 * beside it.
 */
@AnalyzeClasses(packages = "rootcast", importOptions = AppArchitectureTest.WrittenHere.class)
class AppArchitectureTest {

    /** Main classes of this module; tests, the core and what MapStruct makes are left out. */
    static final class WrittenHere implements ImportOption {
        @Override
        public boolean includes(Location location) {
            return location.contains("/rootcast/app/")
                    && !location.contains("/test-classes/")
                    && !location.contains("MapperImpl");
        }
    }

    /**
     * Who may use whom, itself always; the arrows of design §5 with what serves them all on the right. Whoever adds an
     * arrow here explains it in the commit.
     */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
            Map.entry("problem", Set.of()),
            Map.entry("wiring", Set.of()),
            Map.entry("people", Set.of("problem", "wiring")),
            Map.entry("once", Set.of("node", "people", "problem")),
            Map.entry("node", Set.of()),
            Map.entry("table", Set.of("problem")),
            Map.entry("snapshot", Set.of("once", "problem", "wiring")),
            Map.entry("site", Set.of("people", "snapshot", "once", "problem")),
            Map.entry("crop", Set.of("people", "site", "snapshot", "once", "problem")),
            Map.entry("climate", Set.of("table", "node", "site", "snapshot", "once", "people", "problem")),
            Map.entry("ledger", Set.of("table", "crop", "site", "once", "people", "problem")),
            Map.entry("outlook", Set.of("ledger", "climate", "crop", "site", "snapshot", "once", "people", "problem")),
            Map.entry(
                    "availability",
                    Set.of("outlook", "ledger", "climate", "crop", "site", "snapshot", "once", "people", "problem")),
            Map.entry(
                    "board",
                    Set.of(
                            "availability",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "once",
                            "people",
                            "problem",
                            "wiring")),
            Map.entry(
                    "live",
                    Set.of(
                            "warnings",
                            "board",
                            "availability",
                            "outlook",
                            "climate",
                            "snapshot",
                            "once",
                            "people",
                            "problem")),
            Map.entry("feed", Set.of("people", "problem")),
            Map.entry("treatments", Set.of("ledger", "crop", "site", "once", "people", "problem")),
            Map.entry(
                    "rounds",
                    Set.of(
                            "treatments",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "once",
                            "people",
                            "problem")),
            Map.entry(
                    "warnings",
                    Set.of(
                            "node",
                            "rounds",
                            "snapshot",
                            "treatments",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "once",
                            "people",
                            "problem")),
            Map.entry(
                    "lookback",
                    Set.of(
                            "board",
                            "availability",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "problem")),
            Map.entry(
                    "learning",
                    Set.of(
                            "trackrecord",
                            "whatif",
                            "board",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "once",
                            "people",
                            "problem")),
            Map.entry(
                    "trackrecord",
                    Set.of("people", "outlook", "ledger", "climate", "crop", "site", "snapshot", "problem")),
            Map.entry(
                    "whatif",
                    Set.of(
                            "people",
                            "board",
                            "availability",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "problem")),
            Map.entry(
                    "flow",
                    Set.of(
                            "live",
                            "board",
                            "availability",
                            "outlook",
                            "ledger",
                            "climate",
                            "crop",
                            "site",
                            "snapshot",
                            "once",
                            "problem")));

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

    /** Seen red on rootcast.app.util and on rootcast.app.ledger.dto. */
    @ArchTest
    static final ArchRule packagesAreWordsOfTheTrade = classes()
            .should(new ArchCondition<>("reside in a package of the list") {
                @Override
                public void check(JavaClass type, ConditionEvents events) {
                    String[] segments = type.getPackageName().split("\\.");
                    boolean map = type.getName().equals("rootcast.app.package-info");
                    boolean listed = segments.length > 2 && MAY_USE.containsKey(segments[2]);
                    boolean ring = segments.length == 3
                            || segments.length == 4 && Set.of("rest", "store").contains(segments[3])
                            || type.getPackageName().matches("rootcast\\.app\\.(climate\\.(mqtt|csv)|ledger\\.csv)");
                    if (!map && !(listed && ring)) {
                        events.add(
                                SimpleConditionEvent.violated(type, type.getName() + " is in no package of the list"));
                    }
                }
            });

    /** Seen red on SiteResource with a field of type RecordEntry and on RecordEntry with one of type PlaceOrder. */
    @ArchTest
    static final ArchRule capabilitiesLookOneWay = classes()
            .that(resideInAPackage("rootcast.app.(*).."))
            .should(lookOnlyAlongTheArrows())
            .because("facts do not know their interpretations");

    /** An entry of a package that does not exist would pass for ever. Seen red on "sticking", before there is one. */
    @ArchTest
    static void everyArrowIsOfAPackageThatExists(JavaClasses all) {
        Set<String> named = new HashSet<>(MAY_USE.keySet());
        MAY_USE.values().forEach(named::addAll);
        all.forEach(type -> named.remove(capabilityOf(type)));
        assertThat(named).as("packages without a class").isEmpty();
    }

    /**
     * The list itself has no way round, so the capabilities that keep to it have none either: seen red on "once" given
     * "board".
     */
    @ArchTest
    static void theArrowsFormNoCycle(JavaClasses any) {
        Set<String> placed = new HashSet<>();
        while (placed.size() < MAY_USE.size()) {
            Set<String> next = new HashSet<>();
            MAY_USE.forEach((capability, uses) -> {
                if (!placed.contains(capability) && placed.containsAll(uses)) {
                    next.add(capability);
                }
            });
            if (next.isEmpty()) {
                throw new AssertionError("a cycle among those not in " + placed);
            }
            placed.addAll(next);
        }
    }

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

    private static ArchCondition<JavaClass> lookOnlyAlongTheArrows() {
        return new ArchCondition<>("look only along the arrows") {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                String from = capabilityOf(type);
                for (Dependency dependency : type.getDirectDependenciesFromSelf()) {
                    String to = capabilityOf(dependency.getTargetClass());
                    if (!to.isEmpty()
                            && !to.equals(from)
                            && !MAY_USE.getOrDefault(from, Set.of()).contains(to)) {
                        events.add(SimpleConditionEvent.violated(dependency, dependency.getDescription()));
                    }
                }
            }
        };
    }

    /** Package after rootcast.app, empty for classes of others. */
    private static String capabilityOf(JavaClass type) {
        String[] segments = type.getPackageName().split("\\.");
        return type.getPackageName().startsWith("rootcast.app.") ? segments[2] : "";
    }
}
