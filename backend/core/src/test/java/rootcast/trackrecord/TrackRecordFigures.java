package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.learning.SimulatedNursery;
import rootcast.learning.SimulatedNursery.Manner;

/** Prints the table of docs/models/track-record.md; run by name. One nursery of 300 batches per manner, seed 7. */
class TrackRecordFigures {

    @ParameterizedTest(name = "seen {0} days apart, looks entered: {1}")
    @CsvSource({"1, true", "2, true", "3, true", "1, false"})
    void printsTheRecord(double everyDays, boolean looks) {
        var nursery =
                new SimulatedNursery(7, Manner.usual(300).setpoints(19, 22, 25).rounds(everyDays, looks));
        List<Case> cases = BackTestTest.walked(nursery, BackTestTest.simulated(nursery));
        for (int lead : List.of(1, 3, 7, 14, 21)) {
            Figures figures = Figures.of(
                    cases.stream().filter(each -> each.leadDays() == lead).toList());
            System.out.printf(
                    Locale.ROOT,
                    "| %.0f | %s | %d | %.2f | %.2f | %.0f / %.0f / %.0f %% | %.2f | %.2f | %.0f %% |%n",
                    everyDays,
                    looks ? "yes" : "no",
                    lead,
                    figures.maeDays(),
                    figures.biasDays(),
                    100 * figures.coverage50(),
                    100 * figures.coverage80(),
                    100 * figures.coverage90(),
                    figures.calendarMaeDays(),
                    figures.degreeDaysMaeDays(),
                    100 * figures.promisedKept());
            assertThat(figures.maeDays()).isLessThan(figures.calendarMaeDays());
        }
    }
}
