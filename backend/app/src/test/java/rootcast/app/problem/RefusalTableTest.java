package rootcast.app.problem;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.RecordComponent;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rootcast.availability.Cell;
import rootcast.availability.NotEnoughOpen;
import rootcast.availability.Placing;
import rootcast.availability.WantedLine;
import rootcast.crop.Stage;
import rootcast.ledger.Refusal;
import rootcast.ledger.Sample;

/** Every refusal of the core has a line in the table, found by walking the sealed type and not by a list kept here. */
class RefusalTableTest {

    private static final Map<Class<?>, Object> EXAMPLES = Map.of(
            int.class,
            17,
            long.class,
            18L,
            String.class,
            "house-9",
            Stage.class,
            Stage.CALLUS,
            Sample.class,
            new Sample(3, 40, 5),
            Instant.class,
            Instant.parse("2026-03-02T10:00:00Z"),
            UUID.class,
            UUID.fromString("00000000-0000-4000-8000-000000000001"),
            Refusal.class,
            new Refusal.MoreThanAlive(8, 7));

    static Stream<Class<?>> refusals() {
        return Arrays.stream(Refusal.class.getPermittedSubclasses());
    }

    @ParameterizedTest
    @MethodSource("refusals")
    void everyRefusalHasALineWithItsNumbers(Class<?> type) throws ReflectiveOperationException {
        List<Object> values = new ArrayList<>();
        for (RecordComponent component : type.getRecordComponents()) {
            assertThat(EXAMPLES).as("an example for %s", component).containsKey(component.getType());
            values.add(EXAMPLES.get(component.getType()));
        }
        Refusal refusal = (Refusal) type.getDeclaredConstructor(Arrays.stream(type.getRecordComponents())
                        .map(RecordComponent::getType)
                        .toArray(Class[]::new))
                .newInstance(values.toArray());

        Problem problem = RefusalTable.problemOf(refusal);

        Map<String, Object> body = problem.body("/api/x");
        assertThat(problem.status()).isIn(409, 422);
        assertThat(problem.code()).matches("[a-z]+(-[a-z]+)*");
        assertThat(body).containsKeys("type", "title", "status", "detail", "instance");
        assertThat(body.keySet()).as("a program can read what decided").hasSizeGreaterThan(5);
        assertThat(problem.getMessage()).isNotBlank().doesNotContain("%", "null", "[", "{");
    }

    @Test
    void noTwoRefusalsShareAType() throws ReflectiveOperationException {
        assertThat(refusals().count()).isGreaterThanOrEqualTo(15);
        List<String> types = new ArrayList<>();
        for (Class<?> refusal : refusals().toList()) {
            Object[] values = Arrays.stream(refusal.getRecordComponents())
                    .map(component -> EXAMPLES.get(component.getType()))
                    .toArray();
            types.add(RefusalTable.problemOf((Refusal) refusal.getDeclaredConstructors()[0].newInstance(values))
                    .code());
        }
        assertThat(types).doesNotHaveDuplicates();
    }

    @Test
    void anOrderThatIsRefusedNamesEachLineWithWhatIsOpenAndTheNearestDate() {
        Cell cell = new Cell("variety-a", "format-b", "site-c");
        LocalDate day = LocalDate.of(2026, 3, 9);
        Problem problem = RefusalTable.problemOf(new Placing.Refused(List.of(
                new NotEnoughOpen(
                        new WantedLine(1, cell, day, 7),
                        4,
                        new NotEnoughOpen.Nearest(day.minusDays(9), 8),
                        new NotEnoughOpen.Nearest(day.plusDays(8), 11)),
                new NotEnoughOpen(new WantedLine(2, cell, day, 90), 0, null, null))));

        assertThat(problem.status()).isEqualTo(409);
        assertThat(problem.code()).isEqualTo("not-enough-open");
        assertThat(problem.getMessage()).contains("7", "4", "2026-03-17", "90", "26 weeks");
        List<?> lines = (List<?>) problem.body("/api/orders").get("lines");
        assertThat(lines).hasSize(2);
        assertThat(lines.get(0).toString())
                .contains(
                        "line=1", "asked=7", "open=4", "nearestDate=2026-03-17", "nearestOpen=11", "shipOn=2026-03-09")
                .contains("earlierDate=2026-02-28", "earlierOpen=8", "laterDate=2026-03-17", "laterOpen=11");
        assertThat(lines.get(1).toString()).contains("line=2", "asked=90", "open=0", "nearestDate=null");
    }
}
