package rootcast;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.AccessTarget.CodeUnitAccessTarget;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.time.Clock;
import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.ThreadLocalRandom;
import java.util.function.Predicate;
import java.util.regex.Pattern;

/**
 * What the core may lean on and which way its packages look.
 *
 * <p>The direction rule goes by package names and not by layers that must exist, so it bites on a package from the first
 * class in it. ArchUnit fails a rule that matches no class at all (its default, left on).
 */
@AnalyzeClasses(packages = "rootcast", importOptions = DoNotIncludeTests.class)
class CoreArchitectureTest {

    /** Right of the arrows of package-info and design §5, written out: who may use whom. Itself is always allowed. */
    private static final Map<String, Set<String>> MAY_USE = Map.ofEntries(
            Map.entry("facts", Set.of()),
            Map.entry("saying", Set.of()),
            Map.entry("site", Set.of()),
            Map.entry("numerics", Set.of()),
            Map.entry("crop", Set.of("saying", "site")),
            Map.entry("climate", Set.of("saying", "numerics")),
            Map.entry("ledger", Set.of("facts", "crop", "site")),
            Map.entry("outlook", Set.of("saying", "facts", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry("availability", Set.of("facts", "outlook", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry(
                    "board",
                    Set.of("facts", "availability", "outlook", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry("rounds", Set.of("saying", "facts", "outlook", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry(
                    "warnings", Set.of("facts", "rounds", "outlook", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry("feed", Set.of("saying")),
            Map.entry(
                    "learning", Set.of("saying", "facts", "outlook", "ledger", "crop", "site", "climate", "numerics")),
            Map.entry(
                    "trackrecord",
                    Set.of("facts", "availability", "outlook", "ledger", "crop", "site", "climate", "numerics")));

    private static final Set<String> TECHNICAL_PACKAGES =
            Set.of("service", "dto", "util", "utils", "helper", "manager", "entity", "common");

    private static final Pattern TECHNICAL_CLASS =
            Pattern.compile(".*(Service|Dto|DTO|Utils?|Helper|Manager|Entity|Common)");

    /** Seen red on a field of type {@code org.jgrapht.Graph}, with that library put on the compile path. */
    @ArchTest
    static final ArchRule coreUsesOnlyTheJdkAndTheStatistics = classes()
            .should()
            .onlyDependOnClassesThat()
            .resideInAnyPackage(
                    "java..",
                    "rootcast..",
                    "org.jspecify..",
                    "org.apache.commons.statistics..",
                    "org.apache.commons.numbers..")
            .because("the centre must build and test without Quarkus, a database or a network");

    /**
     * Seen red on {@code Instant.now()}, {@code LocalDate.now(zone)}, {@code Year.now()}, {@code Clock.systemUTC()}, {@code
     * System.currentTimeMillis()} and the reference {@code Instant::now}.
     */
    @ArchTest
    static final ArchRule coreNeverReadsTheClock = classes()
            .should(never("read the clock", CoreArchitectureTest::readsTheClock))
            .because("time is an argument, so every forecast can be replayed");

    /**
     * Seen red on {@code Math.random()}, {@code new Random()}, {@code Random::new}, {@code UUID.randomUUID()} and {@code
     * ThreadLocalRandom.current()}; {@code new Random(3)} passes.
     */
    @ArchTest
    static final ArchRule coreNeverThrowsDice = classes()
            .should(never("throw dice without a seed", CoreArchitectureTest::throwsDice))
            .because("a seed is an argument, so every run can be replayed");

    /** Seen red on two planted classes, rootcast.rounds and rootcast.feed, that used each other. */
    @ArchTest
    static final ArchRule capabilitiesFormNoCycle =
            slices().matching("rootcast.(*)..").should().beFreeOfCycles();

    /** Seen red on rootcast.ledger using rootcast.board, on rootcast.site using rootcast.crop, on outlook using board. */
    @ArchTest
    static final ArchRule packagesLookOneWay = classes()
            .that(resideInAPackage("rootcast.(*).."))
            .should(lookOnlyToTheRightOfTheArrows())
            .because("facts do not know their interpretations");

    /** An entry of a package that does not exist would pass for ever. Seen red on "sticking", before there is one. */
    @ArchTest
    static void everyArrowIsOfAPackageThatExists(JavaClasses all) {
        Set<String> named = new TreeSet<>(MAY_USE.keySet());
        MAY_USE.values().forEach(named::addAll);
        all.forEach(type -> named.remove(capabilityOf(type)));
        assertThat(named).as("packages without a class").isEmpty();
    }

    /** Seen red on rootcast.forecast and on rootcast.outlook.util. */
    @ArchTest
    static final ArchRule packagesAreWordsOfTheTrade = classes()
            .should(each("reside in a package of the glossary", CoreArchitectureTest::isInAPackageOfTheGlossary))
            .because("the path names the capability");

    /** Seen red on BatchService, LotHelper and RowEntity. */
    @ArchTest
    static final ArchRule classesAreWordsOfTheTrade = classes()
            .should(each(
                    "bear no technical suffix",
                    type -> !TECHNICAL_CLASS.matcher(type.getSimpleName()).matches()))
            .because("a name says what a thing is in the trade");

    private static boolean readsTheClock(JavaAccess<?> access) {
        JavaClass owner = access.getTargetOwner();
        String method = access.getName();
        return owner.getPackageName().equals("java.time") && method.equals("now")
                || owner.isEquivalentTo(Clock.class) && (method.startsWith("system") || method.startsWith("tick"))
                || owner.isEquivalentTo(System.class)
                        && (method.equals("currentTimeMillis") || method.equals("nanoTime"));
    }

    private static boolean throwsDice(JavaAccess<?> access) {
        JavaClass owner = access.getTargetOwner();
        String method = access.getName();
        boolean unseeded = access.getTarget() instanceof CodeUnitAccessTarget target
                && target.getRawParameterTypes().isEmpty();
        return owner.isEquivalentTo(Math.class) && method.equals("random")
                || owner.isAssignableTo(Random.class) && method.equals("<init>") && unseeded
                || owner.isEquivalentTo(SplittableRandom.class) && method.equals("<init>") && unseeded
                || owner.isEquivalentTo(ThreadLocalRandom.class) && method.equals("current")
                || owner.isEquivalentTo(UUID.class) && method.equals("randomUUID");
    }

    /** The map, package-info of rootcast itself, is the one thing outside a capability. */
    private static boolean isInAPackageOfTheGlossary(JavaClass type) {
        String[] segments = type.getPackageName().split("\\.");
        return type.getName().equals("rootcast.package-info")
                || segments.length > 1
                        && MAY_USE.containsKey(segments[1])
                        && Arrays.stream(segments).noneMatch(TECHNICAL_PACKAGES::contains);
    }

    /** Looks at calls and at method references alike. */
    private static ArchCondition<JavaClass> never(String what, Predicate<JavaAccess<?>> offends) {
        return new ArchCondition<>("never " + what) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                for (JavaAccess<?> access : type.getAccessesFromSelf()) {
                    if (offends.test(access)) {
                        events.add(SimpleConditionEvent.violated(access, access.getDescription()));
                    }
                }
            }
        };
    }

    private static ArchCondition<JavaClass> lookOnlyToTheRightOfTheArrows() {
        return new ArchCondition<>("look only to the right of the arrows") {
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

    private static ArchCondition<JavaClass> each(String what, Predicate<JavaClass> holds) {
        return new ArchCondition<>(what) {
            @Override
            public void check(JavaClass type, ConditionEvents events) {
                if (!holds.test(type)) {
                    events.add(SimpleConditionEvent.violated(type, type.getName() + " should " + what));
                }
            }
        };
    }

    /** First package under rootcast, empty for classes of others. */
    private static String capabilityOf(JavaClass type) {
        String[] segments = type.getPackageName().split("\\.");
        return segments.length > 1 && segments[0].equals("rootcast") ? segments[1] : "";
    }
}
