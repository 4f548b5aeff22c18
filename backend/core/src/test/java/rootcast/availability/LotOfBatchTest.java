package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.outlook.OutlookModel;
import rootcast.site.Site;

/** What a lot offers, against asking the outlook for every day and every number of trays. */
class LotOfBatchTest {

    private static final Site SITE = new Site("s", "S", ZoneId.of("America/New_York"), DayOfWeek.MONDAY);
    private static final TrayFormat T105 = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Instant STUCK = Instant.parse("2026-03-02T15:00:00Z");

    private static Outlook outlook(double asOfDay, double readyOn, double rateSpread, double cellSpread, int hold) {
        return outlook(asOfDay, readyOn, rateSpread, cellSpread, hold, 2_100);
    }

    private static Outlook outlook(
            double asOfDay, double readyOn, double rateSpread, double cellSpread, int hold, int plants) {
        var medium = new HourlySeries();
        for (Instant at = STUCK.minus(Duration.ofDays(3));
                at.isBefore(day(asOfDay));
                at = at.plus(Duration.ofHours(1))) {
            medium.add(at, 21 + 3 * Math.sin(at.getEpochSecond() / 86_400.0 * 2 * Math.PI));
        }
        var houses = new HouseCurves(day(asOfDay));
        houses.house("A", medium, SetpointPlan.none());
        var history = new BatchHistory(
                STUCK,
                readyOn > 0 ? Map.of(Stage.READY, day(readyOn)) : Map.of(),
                List.of(new BatchHistory.Placement("A", STUCK)),
                new BatchHistory.Plants(STUCK, plants),
                List.of(),
                List.of(),
                null);
        return OutlookModel.outlook(history, crop(rateSpread, cellSpread, hold), T105, houses);
    }

    private static CropProfile crop(double rateSpread, double cellSpread, int hold) {
        return new CropProfile(
                List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 9), stage(Stage.ROOT, 10)),
                rateSpread,
                hold,
                cellSpread,
                RateFactors.NONE,
                Variation.USUAL.withDaysKnown().entering(0));
    }

    private static StageProfile stage(Stage stage, double days) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.BETA, 8, 27, 36, 22), 0.96, 80);
    }

    private static Instant day(double days) {
        return STUCK.plusMillis(Math.round(days * 86_400_000));
    }

    @ParameterizedTest(name = "as of day {0}, ready seen on {1}, rate {2}, cells {3}, hold {4}")
    @CsvSource({
        "3, 0, 0.10, 0.12, 14",
        "3, 0, 0.20, 0.20, 4",
        "20, 0, 0.10, 0.12, 8",
        "27, 26, 0.10, 0.12, 10",
        "34, 26, 0.10, 0.12, 10",
        "60, 26, 0.10, 0.12, 10",
        "5, 0, 0.02, 0.30, 3",
    })
    void offersWhatTheOutlookSupportsOnEveryDay(
            double asOf, double readyOn, double rateSpread, double cellSpread, int hold) {
        Outlook outlook = outlook(asOf, readyOn, rateSpread, cellSpread, hold);
        SupplyLot lot = LotOfBatch.of("b", outlook, SITE).orElseThrow();
        LocalDate today = SITE.dayOf(outlook.asOf());
        for (double confidence : new double[] {0.99, 0.9, 0.7, 0.5, 0.2}) {
            List<Integer> supported = new ArrayList<>();
            List<Integer> offered = new ArrayList<>();
            for (int days = -3; days < 120; days++) {
                LocalDate day = today.plusDays(days);
                offered.add(lot.traysAt(day, confidence));
                supported.add(days < 0 ? 0 : supported(outlook, day, confidence));
            }
            assertThat(offered).as("at %s", confidence).isEqualTo(supported);
        }
    }

    private static int supported(Outlook outlook, LocalDate day, double confidence) {
        var odds = outlook.usable().at(SITE.startOf(day));
        int trays = 0;
        while (odds.applyAsDouble(trays + 1) >= confidence - 1e-12) {
            trays++;
        }
        return trays;
    }

    @Test
    void aBatchOfTooFewPlantsForATrayOffersNone() {
        SupplyLot lot =
                LotOfBatch.of("b", outlook(3, 0, 0.1, 0.12, 14, 70), SITE).orElseThrow();

        assertThat(lot.usableFrom(SITE.dayOf(day(3)), 0.5)).isNull();
        assertThat(lot.usableUntilInclusive(0.5)).isNull();
        assertThat(lot.traysAt(SITE.dayOf(day(28)), 0.5)).isZero();
    }

    @Test
    void aBatchThatNeverGetsReadyIsNoLot() {
        var houses = new HouseCurves(day(5));
        var cold = new HourlySeries();
        for (Instant at = STUCK; at.isBefore(day(5)); at = at.plus(Duration.ofHours(1))) {
            cold.add(at, 5);
        }
        houses.house("A", cold, SetpointPlan.none());
        var history = new BatchHistory(
                STUCK,
                Map.of(),
                List.of(new BatchHistory.Placement("A", STUCK)),
                new BatchHistory.Plants(STUCK, 2_100),
                List.of(),
                List.of(),
                null);

        assertThat(LotOfBatch.of("b", OutlookModel.outlook(history, crop(0.1, 0.12, 8), T105, houses), SITE))
                .isEmpty();
    }

    /** Seen ready on 28 March at 11:00 by the site's clock: by the start of that day it was not, by the next it was. */
    @Test
    void aBatchSeenReadyIsReadyFromTheStartOfTheNextDay() {
        SupplyLot lot = LotOfBatch.of("b", outlook(34, 26, 0.1, 0.12, 10), SITE).orElseThrow();

        assertThat(lot.readyBy(LocalDate.of(2026, 3, 28))).isZero();
        assertThat(lot.readyBy(LocalDate.of(2026, 3, 29))).isEqualTo(1);
    }
}
