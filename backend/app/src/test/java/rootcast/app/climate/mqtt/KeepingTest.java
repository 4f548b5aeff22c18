package rootcast.app.climate.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import jakarta.persistence.PersistenceException;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Messages are numbers; the database is away for as many calls as the test says. */
class KeepingTest {

    private static final List<Integer> HUNDRED = IntStream.range(0, 100).boxed().toList();

    private final List<Integer> stored = new ArrayList<>();
    private final List<Integer> apart = new ArrayList<>();
    private final List<Duration> pauses = new ArrayList<>();
    private int awayFor;
    private Set<Integer> neverStorable = Set.of();
    private boolean stopped;
    private int calls;

    private final Keeping.Store<Integer> store = new Keeping.Store<>() {
        @Override
        public void keep(List<Integer> together) {
            reach();
            if (together.stream().anyMatch(neverStorable::contains)) {
                throw new PersistenceException(new SQLException("value out of range", "22003"));
            }
            stored.addAll(together);
        }

        @Override
        public void setApart(Integer message, String reason) {
            reach();
            apart.add(message);
        }
    };

    private void reach() {
        calls++;
        if (awayFor > 0) {
            awayFor--;
            throw new PersistenceException(new SQLException("the database system is shutting down", "57P01"));
        }
    }

    private boolean keep(List<Integer> messages) {
        return new Keeping<>(store, pauses::add, () -> stopped).keepAll(messages);
    }

    /** The database is away for the whole, and still for the first few; then it is back. Not one of them is at fault. */
    @ParameterizedTest
    @CsvSource({"1", "2", "4", "60", "101"})
    void aDatabaseThatComesBackHalfWayLosesNothing(int callsAway) {
        awayFor = callsAway;

        assertThat(keep(HUNDRED)).isTrue();

        assertThat(stored).containsExactlyElementsOf(HUNDRED);
        assertThat(apart).isEmpty();
    }

    @Test
    void pausesGrowAndEnd() {
        awayFor = 9;

        keep(HUNDRED);

        assertThat(pauses)
                .extracting(Duration::toMillis)
                .containsExactly(250L, 500L, 1_000L, 2_000L, 4_000L, 8_000L, 10_000L, 10_000L, 10_000L);
    }

    @Test
    void whatCanNeverBeStoredIsSetApartAndHoldsUpNoOther() {
        neverStorable = Set.of(3, 4, 77);

        assertThat(keep(HUNDRED)).isTrue();

        assertThat(apart).containsExactly(3, 4, 77);
        assertThat(stored).hasSize(97).doesNotContain(3, 4, 77).doesNotHaveDuplicates();
        assertThat(pauses).isEmpty();
        assertThat(calls)
                .as("halving: three messages in a hundred cost few attempts")
                .isLessThan(50);
    }

    @Test
    void oneAloneThatCanNeverBeStoredIsSetApart() {
        neverStorable = Set.of(3);

        assertThat(keep(List.of(3))).isTrue();

        assertThat(apart).containsExactly(3);
    }

    @Test
    void isNotSetApartUntilThatIsWritten() {
        neverStorable = Set.of(3);
        var awayAfterTheFault = new Keeping.Store<Integer>() {
            @Override
            public void keep(List<Integer> together) {
                awayFor = 3;
                throw new IllegalArgumentException("no such day");
            }

            @Override
            public void setApart(Integer message, String reason) {
                store.setApart(message, reason);
            }
        };

        assertThat(new Keeping<>(awayAfterTheFault, pauses::add, () -> stopped).keepAll(List.of(3)))
                .isTrue();

        assertThat(apart).containsExactly(3);
        assertThat(pauses).hasSize(3);
    }

    @Test
    void whoIsStoppedKeepsNothingMoreAndSaysSo() {
        awayFor = 1_000;
        var keeping = new Keeping<>(
                store,
                length -> {
                    pauses.add(length);
                    stopped = pauses.size() == 5;
                },
                () -> stopped);

        assertThat(keeping.keepAll(HUNDRED)).isFalse();

        assertThat(stored).isEmpty();
        assertThat(apart).isEmpty();
    }

    /** States: the SQL standard and PostgreSQL's appendix A; the last three are H2's own. */
    @ParameterizedTest(name = "{0} is the message''s own fault: {1}")
    @CsvSource({
        "22003, true",
        "22021, true",
        "23505, true",
        "23514, true",
        "23513, true",
        "08006, false",
        "57P01, false",
        "57P03, false",
        "53300, false",
        "55P03, false",
        "40001, false",
        "40P01, false",
        "25P03, false",
        "HYT00, false",
        "90067, false",
        "90098, false",
    })
    void aFaultIsToldByItsState(String state, boolean own) {
        assertThat(Keeping.isOfTheData(new PersistenceException(new SQLException("x", state))))
                .isEqualTo(own);
    }

    @Test
    void aFaultWithoutAStateIsToldByWhoThrewIt() {
        assertThat(Keeping.isOfTheData(new PersistenceException(new SQLException("acquisition timeout"))))
                .isFalse();
        assertThat(Keeping.isOfTheData(new PersistenceException("could not begin")))
                .isFalse();
        assertThat(Keeping.isOfTheData(new IllegalArgumentException("no such unit")))
                .isTrue();
    }
}
