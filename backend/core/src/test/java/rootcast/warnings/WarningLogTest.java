package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rootcast.warnings.WarningLog.Change;
import rootcast.warnings.WarningLog.Logged;

class WarningLogTest {

    private static final UUID ID = new UUID(0, 7);
    private static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
    private static final Duration A_DAY = Duration.ofDays(1);

    private static Instant hour(int hours) {
        return NOON.plus(Duration.ofHours(hours));
    }

    private static Warning cold(int since, @Nullable Integer until) {
        return new Warning(
                WarningKind.MEDIUM_COLD,
                "H1",
                null,
                null,
                hour(since),
                hour(since + 3),
                until == null ? null : hour(until),
                18.0,
                20.0,
                "Cel",
                List.of("B1"));
    }

    private static List<Change> changes(List<Logged> logged, List<Warning> found, int asOf) {
        return WarningLog.changes(logged, found, hour(asOf), A_DAY);
    }

    @Test
    void whatIsFoundForTheFirstTimeIsNew() {
        List<Change> changes = changes(List.of(), List.of(cold(0, null)), 3);

        assertThat(changes).hasSize(1);
        assertThat(changes.get(0).isNew()).isTrue();
    }

    @Test
    void whatIsFoundAgainUnchangedIsNotWrittenAgain() {
        assertThat(changes(List.of(new Logged(ID, cold(0, null))), List.of(cold(0, null)), 9))
                .isEmpty();
    }

    @Test
    void anEndIsWrittenUnderTheSameId() {
        List<Change> changes = changes(List.of(new Logged(ID, cold(0, null))), List.of(cold(0, 8)), 40);

        assertThat(changes).containsExactly(new Change(ID, cold(0, 8)));
    }

    @Test
    void aLateReadingThatMovesTheStartMakesNoSecondWarning() {
        List<Change> changes = changes(List.of(new Logged(ID, cold(2, null))), List.of(cold(-1, null)), 9);

        assertThat(changes).hasSize(1);
        assertThat(changes.get(0).id()).isEqualTo(ID);
        assertThat(changes.get(0).warning().since()).isEqualTo(hour(-1));
        assertThat(changes.get(0).warning().raisedAt())
                .as("people were told then")
                .isEqualTo(hour(5));
    }

    @Test
    void whatLastedAndIsNoLongerFoundHasEnded() {
        List<Change> changes = changes(List.of(new Logged(ID, cold(0, null))), List.of(), 9);

        assertThat(changes).containsExactly(new Change(ID, cold(0, 9)));
    }

    @Test
    void aSecondFaultOfTheSameKindIsAnotherWarning() {
        List<Change> changes = changes(List.of(new Logged(ID, cold(0, 8))), List.of(cold(0, 8), cold(30, null)), 33);

        assertThat(changes).extracting(Change::isNew).containsExactly(true);
        assertThat(changes.get(0).warning().since()).isEqualTo(hour(30));
    }

    @Test
    void whatWasOverLongBeforeItWasFoundIsLeftOut() {
        assertThat(changes(List.of(), List.of(cold(0, 8)), 33)).isEmpty();
        assertThat(changes(List.of(), List.of(cold(0, 8)), 32)).hasSize(1);
    }

    @Test
    void whatHadEndedAndIsNoLongerFoundStaysAsItWasWritten() {
        assertThat(changes(List.of(new Logged(ID, cold(0, 8))), List.of(), 40)).isEmpty();
    }
}
