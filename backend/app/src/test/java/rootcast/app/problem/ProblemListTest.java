package rootcast.app.problem;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rootcast.climate.ReadingRemark;
import rootcast.crop.Phase;
import rootcast.crop.RecipeQuantity;
import rootcast.crop.Stage;
import rootcast.learning.CardinalsWhy;
import rootcast.rounds.Why;
import rootcast.saying.Fault;
import rootcast.saying.Sayable;
import rootcast.saying.ValueKind;

/**
 * docs/problems.json is the list of all that this server tells as a code with values; the screens' tests want words in
 * every language for each line of it.
 *
 * <p>To refresh it after a wanted change: {@code mvn -pl backend/app -am test -Dtest=ProblemListTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Dproblems=write}, and commit it.
 */
class ProblemListTest {

    private static final Path COMMITTED = Path.of(System.getProperty("repository.root"), "docs", "problems.json");

    @Test
    void theCommittedListIsTheOneInTheCode() throws IOException {
        String list = list();
        if ("write".equals(System.getProperty("problems"))) {
            Files.writeString(COMMITTED, list);
        }

        assertThat(Files.readString(COMMITTED)).isEqualTo(list);
    }

    @Test
    void aMemberThatTheListDoesNotHaveIsNotSent() {
        Problem problem = new Problem(ProblemType.MORE_THAN_ALIVE, "…").with("asked", 5);

        assertThatIllegalStateException().isThrownBy(() -> problem.with("colour", "red"));
        assertThatIllegalStateException().isThrownBy(() -> problem.with("alive", Instant.EPOCH));
        assertThat(problem.body("/api/x")).containsEntry("asked", 5).doesNotContainKeys("colour", "alive");
    }

    private static String list() throws IOException {
        Map<String, Object> problems = new TreeMap<>();
        for (ProblemType type : ProblemType.values()) {
            problems.put(type.wireName(), Map.of("status", type.status(), "values", kinds(type.takes())));
        }
        Map<String, Object> all = new LinkedHashMap<>();
        all.put("problems", problems);
        all.put("faults", sayings(Fault.values()));
        all.put("why", sayings(Why.values()));
        all.put("readings", sayings(ReadingRemark.values()));
        all.put("cardinals", sayings(CardinalsWhy.values()));
        all.put(
                "words",
                Map.of(
                        "thing", wireNames(Thing.values(), Thing::wireName),
                        "stage", names(Stage.values()),
                        "phase", names(Phase.values()),
                        "quantities", wireNames(RecipeQuantity.values(), RecipeQuantity::wireName)));
        var indented = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
        return new ObjectMapper()
                        .configure(com.fasterxml.jackson.databind.SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS, true)
                        .writer(indented)
                        .writeValueAsString(all)
                + "\n";
    }

    private static Map<String, Object> sayings(Sayable... all) {
        Map<String, Object> sayings = new TreeMap<>();
        for (Sayable each : all) {
            sayings.put(each.wireName(), Map.of("values", kinds(each.takes())));
        }
        return sayings;
    }

    private static Map<String, String> kinds(Map<String, ValueKind> takes) {
        Map<String, String> kinds = new TreeMap<>();
        takes.forEach((name, kind) -> kinds.put(name, kind.name().toLowerCase(Locale.ROOT)));
        return kinds;
    }

    private static List<String> names(Enum<?>... all) {
        return Arrays.stream(all).map(Enum::name).toList();
    }

    private static <T> List<String> wireNames(T[] all, java.util.function.Function<T, String> name) {
        return Arrays.stream(all).map(name).toList();
    }
}
