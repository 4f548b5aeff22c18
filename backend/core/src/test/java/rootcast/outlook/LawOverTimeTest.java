package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Placement;

/**
 * What is believed of a date while time goes on and nothing new is learned. The house was at 22 °C, the reference, for the four
 * days that its probe worked, so that neither what stands in for readings nor what is foretold ever changes.
 */
class LawOverTimeTest {

    private static final Duration STEP = Duration.ofMinutes(30);
    private static final HourlySeries UNTIL_THE_PROBE_DIED = constant(22, days(6), days(10));

    private static Outlook outlook(Instant asOf, double rootedOnDay) {
        Map<Stage, Instant> seen = rootedOnDay > 0 ? Map.of(Stage.ROOT, days(rootedOnDay)) : Map.of();
        return OutlookModel.outlook(
                batch(seen, List.of(new Placement("A", STUCK))),
                CROP,
                TRAY_105,
                houses(asOf, "A", UNTIL_THE_PROBE_DIED));
    }

    /**
     * An hour goes from the weather to come over to the hours that nobody measured, and both may be a degree or two off,
     * which is worth less than six minutes of development an hour here (0.08 per °C · 2 °C · Z · 1 h at the most). So no quantile may
     * move by as much as the half hour that passes.
     */
    @ParameterizedTest(name = "roots seen on day {0}")
    @ValueSource(doubles = {0, 16})
    void inHalfAnHourWithoutNewsNoQuantileMovesByHalfAnHour(double rootedOnDay) {
        Outlook before = outlook(days(19), rootedOnDay);
        for (Instant now = days(19).plus(STEP); now.isBefore(days(33)); now = now.plus(STEP)) {
            Outlook after = outlook(now, rootedOnDay);
            for (int percent = 5; percent <= 95; percent += 5) {
                Instant was = before.ready().quantile(percent / 100.0);
                Instant is = after.ready().quantile(percent / 100.0);
                assertThat(Duration.between(was, is).abs())
                        .as("%d %% at %s", percent, now)
                        .isLessThan(STEP);
            }
            before = after;
        }
    }

    /** The odds of one day change no more from one half hour to the next than the law gives to its likeliest half hour. */
    @ParameterizedTest(name = "roots seen on day {0}")
    @ValueSource(doubles = {0, 16})
    void theOddsOfADayDoNotJumpWhenTheMiddleOfTheRangePasses(double rootedOnDay) {
        Outlook before = outlook(days(19), rootedOnDay);
        for (Instant now = days(19).plus(STEP); now.isBefore(days(33)); now = now.plus(STEP)) {
            Outlook after = outlook(now, rootedOnDay);
            double most = 0;
            for (Instant at = days(22); at.isBefore(days(34)); at = at.plus(STEP)) {
                most = Math.max(
                        most,
                        before.ready().probabilityBy(at.plus(STEP))
                                - before.ready().probabilityBy(at));
            }
            assertThat(after.ready().probabilityBy(days(28)))
                    .as("%s", now)
                    .isCloseTo(before.ready().probabilityBy(days(28)), within(most));
            before = after;
        }
    }

    /** Hours after a date have no part in whether it has passed. */
    @Test
    void aDateThatIsPastStaysAsUnsureAsItWasHoweverLongNobodyMeasures() {
        DateRange soon = outlook(days(40), 16).readyAt();
        DateRange later = outlook(days(50), 16).readyAt();

        assertThat(soon.p90()).isBefore(days(40));
        assertThat(later).isEqualTo(soon);
    }

    /** Had nobody measured and the hours been warm, it may have come already; but not before a look that found it incomplete. */
    @Test
    void noDateLiesBeforeALookThatFoundTheStageIncomplete() {
        Instant looked = days(24);
        BatchHistory history = new BatchHistory(
                STUCK,
                Map.of(Stage.ROOT, days(16)),
                List.of(new Placement("A", STUCK)),
                new BatchHistory.Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null,
                List.of(new BatchHistory.Look(looked, Stage.READY, 20, 16)));
        Outlook outlook = OutlookModel.outlook(history, CROP, TRAY_105, houses(days(27), "A", UNTIL_THE_PROBE_DIED));

        assertThat(outlook.ready().probabilityBy(looked.minusMillis(1))).isZero();
        assertThat(outlook.ready().probabilityBy(days(27))).isBetween(0.3, 1.0);
    }
}
