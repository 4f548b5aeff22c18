package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.climate.SetpointPlan;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Placement;

/**
 * Moves that usually follow, by hand: at 22 °C the stages take 7, 9 and 10 days; the last is linear from 5 °C, so at 18 °C it
 * runs at 13/17 and takes 10 · 17/13 = 13.077 days.
 */
class UsualMovesTest {

    private static final double ROOTING_DAYS = 16;

    /** All batches run alike, so one entered rooted was rooted on that very day. */
    private static final CropProfile ALIKE = GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150);

    private static final double TONING_DAYS = 10 * 17 / 13.0;

    private static HouseCurves houses(double asOfDay) {
        HouseCurves houses = new HouseCurves(days(asOfDay));
        houses.house("A", constant(22, STUCK.minus(Duration.ofDays(3)), days(asOfDay)), SetpointPlan.none());
        houses.house("B", constant(18, STUCK.minus(Duration.ofDays(3)), days(asOfDay)), SetpointPlan.none());
        houses.usualMove("A", new UsualMove(Stage.ROOT, "B"));
        return houses;
    }

    private static Outlook outlook(BatchHistory history, HouseCurves houses) {
        return OutlookModel.outlook(history, CROP, TRAY_105, houses);
    }

    @Test
    void aMoveThatIsStillToComeIsPartOfTheDates() {
        Outlook outlook = outlook(batch("A"), houses(5));

        assertThat(daysAfterSticking(outlook.rootedAt().p50())).isCloseTo(ROOTING_DAYS, within(1e-6));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(ROOTING_DAYS + TONING_DAYS, within(1e-6));
        assertThat(outlook.moves()).containsExactly(new Placement("B", days(ROOTING_DAYS)));
    }

    @Test
    void whereNobodyCarriesThemOnTheyStay() {
        HouseCurves houses = houses(5);
        houses.usualMove("A", null);

        Outlook outlook = outlook(batch("A"), houses);

        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
        assertThat(outlook.moves()).isEmpty();
    }

    /** Two of the ten days ran at 22 °C; the eight that are left take 17/13 of their time. */
    @Test
    void aBatchThatShouldHaveBeenCarriedIsExpectedToBeCarriedNow() {
        BatchHistory rooted = batch(Map.of(Stage.ROOT, days(ROOTING_DAYS)), List.of(new Placement("A", STUCK)));

        Outlook outlook = OutlookModel.outlook(rooted, ALIKE, TRAY_105, houses(18));

        assertThat(outlook.moves()).containsExactly(new Placement("B", days(18)));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(18 + 8 * 17 / 13.0, within(1e-6));
    }

    /** Ten days at 22 °C, as if nobody had ever said otherwise. */
    @Test
    void aBatchThatIsNotCarriedForDaysIsTakenToStay() {
        BatchHistory rooted = batch(Map.of(Stage.ROOT, days(ROOTING_DAYS)), List.of(new Placement("A", STUCK)));

        Outlook outlook = OutlookModel.outlook(rooted, ALIKE, TRAY_105, houses(19.1));

        assertThat(outlook.moves()).isEmpty();
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
    }

    @Test
    void aMoveThatWasRecordedIsNotExpectedAgain() {
        BatchHistory carried = batch(
                Map.of(Stage.ROOT, days(ROOTING_DAYS)),
                List.of(new Placement("A", STUCK), new Placement("B", days(ROOTING_DAYS))));

        Outlook outlook = OutlookModel.outlook(carried, ALIKE, TRAY_105, houses(18));

        assertThat(outlook.moves()).isEmpty();
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(ROOTING_DAYS + TONING_DAYS, within(1e-6));
    }

    @Test
    void movesFollowEachOtherAndCirclesEnd() {
        HouseCurves houses = houses(2);
        houses.usualMove("A", new UsualMove(Stage.CALLUS, "B"));
        houses.usualMove("B", new UsualMove(Stage.ROOT, "A"));

        Outlook outlook = outlook(batch("A"), houses);

        assertThat(outlook.moves()).containsExactly(new Placement("B", days(7)));
    }

    @Test
    void aReadyBatchGoesNowhere() {
        BatchHistory ready =
                batch(Map.of(Stage.ROOT, days(15), Stage.READY, days(24)), List.of(new Placement("A", STUCK)));

        assertThat(outlook(ready, houses(25)).moves()).isEmpty();
    }

    /** What was seen of it was seen where it stood. */
    @Test
    void itsRateIsTheSame() {
        BatchHistory callused = batch(Map.of(Stage.CALLUS, days(8)), List.of(new Placement("A", STUCK)));
        HouseCurves staying = houses(10);
        staying.usualMove("A", null);

        RateBelief moving =
                BatchOutlook.of(callused, CROP, TRAY_105, houses(10)).rate();

        assertThat(moving.quantile(0.5))
                .isEqualTo(BatchOutlook.of(callused, CROP, TRAY_105, staying)
                        .rate()
                        .quantile(0.5));
    }

    @Test
    void theWayIsDrawnAsItIsExpected() {
        var points = BatchOutlook.of(batch("A"), CROP, TRAY_105, houses(5))
                .progress(days(21), days(21), Duration.ofHours(1));

        assertThat(points.get(0).p50()).isCloseTo(2 + 5 / TONING_DAYS, within(1e-6));
    }

    @Test
    void nobodyIsCarriedOnWhenReady() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new UsualMove(Stage.READY, "B"))
                .withMessageContaining("READY");
    }
}
