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
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Calibration;
import rootcast.crop.Calibration.Knot;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;

/** What the crop's record makes of a batch's dates. At 22 °C; the plan is 26 days. */
class RecordedRangeTest {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_90 = 1.2815515655446004;
    private static final Duration MINUTE = Duration.ofMinutes(1);

    private static HouseCurves on(double day) {
        return houses(days(day), "A", constant(22, STUCK.minus(Duration.ofDays(3)), days(day)));
    }

    private static CropProfile recorded(double early, double middle, double late) {
        return CROP.calibrated(new Calibration(List.of(new Knot(7, early, middle, late, 40))));
    }

    private static Outlook outlook(BatchHistory history, CropProfile profile, double day) {
        return OutlookModel.outlook(history, profile, TRAY_105, on(day));
    }

    /** The model's own date at a multiple of the way from the median to the 90 % point, by the definition. */
    private static Instant model(Outlook byModel, double ranges) {
        return byModel.ready().quantile(NORMAL.cumulativeProbability(ranges * Z_90));
    }

    private static void assertClose(Instant one, Instant other) {
        assertThat(Duration.between(one, other).abs()).isLessThan(MINUTE);
    }

    @Test
    void aRecordThatAgreesChangesNothing() {
        Outlook byModel = outlook(batch("A"), CROP, 12);
        Outlook agreed = outlook(batch("A"), recorded(-1, 0, 1), 12);

        assertThat(agreed.readyAt()).isEqualTo(byModel.readyAt());
        assertThat(agreed.rootedAt()).isEqualTo(byModel.rootedAt());
        assertThat(agreed.byRecord().byModel()).isEqualTo(byModel.readyAt());
        assertThat(byModel.byRecord()).isNull();
    }

    /** At −1.5, 0.5 and 2 ranges, which are nodes, and in the tails half as far beyond these as the model's lie beyond its own. */
    @Test
    void datesAreThoseOfTheModelsQuantilesThatTheRecordPutsThere() {
        Outlook byModel = outlook(batch("A"), CROP, 12);
        Outlook recorded = outlook(batch("A"), recorded(-1.5, 0.5, 2), 12);

        assertClose(recorded.readyAt().p10(), model(byModel, -1.5));
        assertClose(recorded.readyAt().p50(), model(byModel, 0.5));
        assertClose(recorded.readyAt().p90(), model(byModel, 2));
        // A third of a range beyond the median: 0.5 + (2 − 0.5) / 3, a node again.
        assertClose(recorded.ready().quantile(NORMAL.cumulativeProbability(Z_90 / 3)), model(byModel, 1));
        assertThat(recorded.byRecord().width()).isEqualTo(1.75);
    }

    /** The prior's last node lies 20/6 ranges from the median: three times as wide the 90 % point is within, the end far beyond. */
    @Test
    void beyondTheLastNodeDatesGoOn() {
        Outlook byModel = outlook(batch("A"), CROP, 12);
        Outlook recorded = outlook(batch("A"), recorded(-3, 0, 3), 12);

        assertClose(recorded.readyAt().p90(), model(byModel, 3));
        assertThat(recorded.ready().quantile(0.999))
                .isAfter(byModel.ready().quantile(1 - 1e-5).plus(Duration.ofDays(1)));
        assertThat(recorded.ready().probabilityBy(byModel.readyAt().p50())).isCloseTo(0.5, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void datesRiseAndStagesStayInOrderWhateverTheRecord(long seed) {
        var random = new Random(seed);
        double middle = random.nextGaussian();
        CropProfile profile =
                recorded(middle - 0.01 - 3 * random.nextDouble(), middle, middle + 0.01 + 3 * random.nextDouble());
        BatchHistory history =
                seed % 2 == 0 ? batch("A") : batch(Map.of(Stage.CALLUS, days(8)), List.of(new Placement("A", STUCK)));

        Outlook outlook = outlook(history, profile, 4 + 3 * seed);

        Instant before = Instant.MIN;
        for (int percent = 1; percent < 100; percent++) {
            Instant at = outlook.ready().quantile(percent / 100.0);
            assertThat(at).isAfterOrEqualTo(before);
            before = at;
        }
        for (Instant at = days(10); at.isBefore(days(60)); at = at.plus(Duration.ofHours(7))) {
            assertThat(outlook.ready().probabilityBy(at.plus(Duration.ofHours(7))))
                    .isGreaterThanOrEqualTo(outlook.ready().probabilityBy(at));
        }
        assertThat(outlook.readyAt().p10()).isAfterOrEqualTo(outlook.rootedAt().p10());
        assertThat(outlook.readyAt().p50()).isAfterOrEqualTo(outlook.rootedAt().p50());
        assertThat(outlook.readyAt().p90()).isAfterOrEqualTo(outlook.rootedAt().p90());
        assertThat(outlook.rootedAt().p10())
                .isAfterOrEqualTo(outlook.callusedAt().p10());
        assertThat(outlook.rootedAt().p90())
                .isAfterOrEqualTo(outlook.callusedAt().p90());
    }

    @Test
    void noDateLiesBeforeALookThatFoundTheBatchNotReady() {
        var history = new BatchHistory(
                STUCK,
                Map.of(),
                List.of(new Placement("A", STUCK)),
                new Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null,
                List.of(new Look(days(25), Stage.READY, 40, 33)));

        Outlook recorded = outlook(history, recorded(-6, 0, 6), 25.5);

        assertThat(recorded.ready().quantile(0.001)).isAfterOrEqualTo(days(25));
    }

    @Test
    void aBatchThatWasSeenReadyWasReadyThen() {
        var history = batch(Map.of(Stage.READY, days(27)), List.of(new Placement("A", STUCK)));

        Outlook recorded = outlook(history, recorded(-2, 1, 2), 28);

        assertThat(recorded.readyAt()).isEqualTo(new DateRange(days(27), days(27), days(27)));
        assertThat(recorded.byRecord()).isNull();
    }

    /** What sales may promise speaks of the same dates: those of a later record come later. */
    @Test
    void traysThatCanLeaveFollowTheDates() {
        Outlook byModel = outlook(batch("A"), CROP, 20);
        Outlook late = outlook(batch("A"), recorded(0, 1, 2), 20);
        Outlook wide = outlook(batch("A"), recorded(-2, 0, 2), 20);
        int most = byModel.saleableTrays().p50();

        double atDate = byModel.usable().at(byModel.readyAt().p50()).applyAsDouble(most / 2);
        assertThat(late.usable().at(byModel.readyAt().p50()).applyAsDouble(most / 2))
                .isLessThan(atDate - 0.1);
        // A range later, as the record has it: the odds that the model gave at its own date, but for the cold of other
        // hours.
        assertThat(late.usable().at(late.readyAt().p50()).applyAsDouble(most / 2))
                .isCloseTo(atDate, within(0.05));
        Instant safe = byModel.readyAt().p90();
        assertThat(wide.usable().at(safe).applyAsDouble(most / 2))
                .isLessThan(byModel.usable().at(safe).applyAsDouble(most / 2));
    }

    @Test
    void whatTheRecordMovesTheDateByIsAPartOfItsOwn() {
        HouseCurves houses = on(12);
        CropProfile profile = recorded(-1, 0.5, 2);
        BatchOutlook made = BatchOutlook.of(batch("A"), profile, TRAY_105, houses);

        DateExplanation explained = ExplanationModel.explain(made, CROP, houses, ZoneOffset.UTC);

        Outlook now = made.now();
        double moved =
                Duration.between(now.byRecord().byModel().p50(), now.readyAt().p50())
                                .toMillis()
                        / 86_400_000.0;
        assertThat(moved).isGreaterThan(0.5);
        DateExplanation.Part last = explained.parts().get(explained.parts().size() - 1);
        assertThat(last.cause()).isEqualTo(DateExplanation.Cause.OWN_RECORD);
        assertThat(last.days()).isCloseTo(moved, within(1e-9));
        assertThat(explained.differenceDays())
                .isCloseTo(
                        Duration.between(explained.plannedAt(), explained.readyAt())
                                        .toMillis()
                                / 86_400_000.0,
                        within(1e-9));
    }

    /** Between 4 and 16 days the logarithm of 8 lies half way. */
    @Test
    void betweenLeadsTheRecordIsStraightInTheLogarithm() {
        var calibration = new Calibration(List.of(new Knot(4, -1, 0, 1, 10), new Knot(16, -2, 0.4, 3, 30)));

        Knot between = calibration.at(8);

        assertThat(between.early()).isCloseTo(-1.5, within(1e-12));
        assertThat(between.middle()).isCloseTo(0.2, within(1e-12));
        assertThat(between.late()).isCloseTo(2, within(1e-12));
        assertThat(between.batches()).isCloseTo(20, within(1e-12));
        assertThat(calibration.at(-3)).isEqualTo(calibration.knots().get(0));
        assertThat(calibration.at(40)).isEqualTo(calibration.knots().get(1));
        assertThat(calibration.at(16)).isEqualTo(calibration.knots().get(1));
    }
}
