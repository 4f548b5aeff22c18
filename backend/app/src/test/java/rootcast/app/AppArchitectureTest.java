package rootcast.app;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
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
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * How the capabilities of the application hang together: one direction between them. What holds inside of one is in
 * {@link RingsArchitectureTest}.
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
                            "node",
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
