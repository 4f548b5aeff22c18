package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variation;
import rootcast.learning.SimulatedNursery;
import rootcast.learning.SimulatedNursery.Manner;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.OutlookModel;
import rootcast.site.Site;

/** Finished batches forecast again. The profile takes 26 days at 22 °C. */
class BackTestTest {

    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Site SITE = new Site("S", "South", ZoneId.of("UTC"), DayOfWeek.MONDAY);
    private static final Instant STUCK = Instant.parse("2026-03-02T00:00:00Z");
    private static final CropProfile PROFILE = new CropProfile(
                    SimulatedNursery.profile(1, 0.1).stages(), 0.1, 14)
            .varying(Variation.USUAL.withDaysKnown().entering(0));

    private static Instant day(double days) {
        return STUCK.plusMillis(Math.round(days * 86_400_000));
    }

    /** A house that has been at 22 °C for ever. */
    private static BackTest.PastHouses at22() {
        var series = new HourlySeries();
        for (int hour = -30 * 24; hour < 200 * 24; hour++) {
            series.add(STUCK.plus(Duration.ofHours(hour)), 22);
        }
        var houses = new HouseCurves(day(0));
        houses.house("A", series, SetpointPlan.none());
        return moment -> {
            houses.advanceTo(moment);
            return houses;
        };
    }

    private record Known(BatchHistory whole, int plantsThere) implements FinishedBatch.Then {

        @Override
        public BatchHistory historyAt(Instant at) {
            Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
            whole.reachedAt().forEach((stage, when) -> {
                if (!when.isAfter(at)) {
                    reached.put(stage, when);
                }
            });
            return new BatchHistory(
                    whole.stuckAt(),
                    reached,
                    whole.placements(),
                    whole.base(),
                    List.of(),
                    List.of(),
                    null,
                    whole.looks().stream()
                            .filter(look -> !look.at().isAfter(at))
                            .toList());
        }

        @Override
        public CropProfile profileAt(Instant at) {
            return PROFILE;
        }

        @Override
        public int plantsThereAt(Instant at) {
            return plantsThere;
        }
    }

    private static FinishedBatch finished(String id, Instant stuckAt, BatchHistory history, int plantsThere) {
        Instant seenReadyAt = history.reachedAt().get(Stage.READY);
        Instant notReadyAt = history.looks().stream()
                .filter(look -> look.stage() == Stage.READY && look.at().isBefore(seenReadyAt))
                .map(BatchHistory.Look::at)
                .max(Instant::compareTo)
                .orElse(seenReadyAt);
        return new FinishedBatch(
                id,
                "C",
                SITE,
                TRAY,
                stuckAt,
                notReadyAt,
                seenReadyAt,
                history.placements(),
                new Known(history, plantsThere));
    }

    private static FinishedBatch batch(String id, double stuckDay, double readyDay, int plantsThere) {
        var history = new BatchHistory(
                day(stuckDay),
                Map.of(Stage.READY, day(readyDay)),
                List.of(new BatchHistory.Placement("A", day(stuckDay))),
                new BatchHistory.Plants(day(stuckDay), 1_050),
                List.of(),
                List.of(),
                null);
        return finished(id, day(stuckDay), history, plantsThere);
    }

    private static Case withLead(List<Case> cases, String batch, int leadDays) {
        return cases.stream()
                .filter(each -> each.batch().equals(batch) && each.leadDays() == leadDays)
                .findFirst()
                .orElseThrow();
    }

    /** 26 days at 22 °C, as the profile says: at every lead the middling date is that day. */
    @Test
    void aBatchThatGoesByTheProfileWasForetoldToTheDay() {
        List<Case> cases = BackTest.of(List.of(batch("B1", 0, 26, 1_050)), at22());

        assertThat(cases).hasSize(7).allSatisfy(each -> {
            assertThat(each.errorDays()).isCloseTo(0, within(0.01));
            assertThat(each.calendarDays()).isCloseTo(0, within(0.01));
            assertThat(each.degreeDaysDays()).isCloseTo(0, within(0.01));
            assertThat(each.inside50()).isEqualTo(1);
            assertThat(each.origin()).isEqualTo(day(26 - each.leadDays()));
        });
    }

    /** Ready on day 28, two later than forecast from day 14. */
    @Test
    void aBatchThatIsLaterHasAPositiveError() {
        Case from14 = withLead(BackTest.of(List.of(batch("B1", 0, 28, 1_050)), at22()), "B1", 14);

        assertThat(from14.errorDays()).isCloseTo(2, within(0.05));
        assertThat(from14.calendarDays()).isCloseTo(2, within(0.01));
        assertThat(from14.degreeDaysDays()).isCloseTo(2, within(0.01));
    }

    /** B1 took 30 days and was ready on day 30; B2 was stuck on day 10 and ready on day 38, 28 days. */
    @Test
    void baselinesLearnFromBatchesThatWereReadyByTheOriginAndFromNoOthers() {
        List<Case> cases = BackTest.of(List.of(batch("B1", 0, 30, 1_050), batch("B2", 10, 38, 1_050)), at22());

        // From day 24 B1 is not ready: 26 days by the profile, 2 too few. From day 31 it is: 30 days, 2 too many.
        assertThat(withLead(cases, "B2", 14).calendarDays()).isCloseTo(2, within(0.01));
        assertThat(withLead(cases, "B2", 14).degreeDaysDays()).isCloseTo(2, within(0.01));
        assertThat(withLead(cases, "B2", 7).calendarDays()).isCloseTo(-2, within(0.01));
        assertThat(withLead(cases, "B2", 7).degreeDaysDays()).isCloseTo(-2, within(0.01));
    }

    @Test
    void aBatchIsNotForetoldFromBeforeItWasStuck() {
        List<Case> cases = BackTest.of(List.of(batch("B1", 0, 20, 1_050)), at22());

        assertThat(cases).extracting(Case::leadDays).containsExactly(14, 10, 7, 5, 3, 1);
    }

    @Test
    void aDateThatHasPassedIsTakenAsNowByTheBaselines() {
        Case late = withLead(BackTest.of(List.of(batch("B1", 0, 40, 1_050)), at22()), "B1", 10);

        assertThat(late.calendarDays()).isCloseTo(10, within(0.01));
        assertThat(late.degreeDaysDays()).isCloseTo(10, within(0.01));
    }

    /** Stuck on a Monday; ready on day 26, a Saturday; the next Monday is day 28. */
    @Test
    void aPromiseIsKeptIfTheBatchIsReadyAndItsTraysAreThere() {
        Case.Promised kept = withLead(BackTest.of(List.of(batch("B1", 0, 26, 1_050)), at22()), "B1", 1)
                .promised();
        Case.Promised tooFew = withLead(BackTest.of(List.of(batch("B1", 0, 26, 99)), at22()), "B1", 1)
                .promised();

        assertThat(kept.shipOn().getDayOfWeek()).isEqualTo(DayOfWeek.MONDAY);
        assertThat(kept.shipOn()).isAfterOrEqualTo(LocalDate.parse("2026-03-30"));
        assertThat(kept.trays()).isBetween(1, 10);
        assertThat(kept.kept()).isTrue();
        assertThat(tooFew.trays()).isEqualTo(kept.trays());
        assertThat(tooFew.kept()).isFalse();
    }

    /** Foretold from day 12 of a batch that took 40 days: the promised Monday passed long before. */
    @Test
    void aPromiseIsBrokenIfTheBatchIsNotReadyByThen() {
        Case early = withLead(BackTest.of(List.of(batch("B1", 0, 40, 1_050)), at22()), "B1", 21);

        assertThat(early.promised().shipOn()).isBefore(LocalDate.parse("2026-04-11"));
        assertThat(early.promised().kept()).isFalse();
    }

    /** Not ready on day 25, ready on day 27, 26 forecast: the middle, and of the probability between all is inside. */
    @Test
    void readyBetweenTwoLooksIsTakenAsTheMiddle() {
        var history = new BatchHistory(
                day(0),
                Map.of(Stage.READY, day(27)),
                List.of(new BatchHistory.Placement("A", day(0))),
                new BatchHistory.Plants(day(0), 1_050),
                List.of(),
                List.of(),
                null,
                List.of(new BatchHistory.Look(day(25), Stage.READY, 50, 10)));
        Case from14 = withLead(BackTest.of(List.of(finished("B1", day(0), history, 1_050)), at22()), "B1", 14);

        assertThat(from14.readyAt()).isEqualTo(day(26));
        assertThat(from14.seenReadyAt()).isEqualTo(day(27));
        assertThat(from14.errorDays()).isCloseTo(0, within(0.01));
        assertThat(from14.inside80()).isEqualTo(1);
    }

    @Test
    void aBatchReadyBeforeItWasStuckIsRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> batch("B1", 5, 5, 1_050));
    }

    static List<FinishedBatch> simulated(SimulatedNursery nursery) {
        return nursery.batches.stream()
                .map(batch -> finished(batch.id(), batch.history().stuckAt(), batch.history(), 1_050))
                .toList();
    }

    static List<Case> walked(SimulatedNursery nursery, List<FinishedBatch> batches) {
        HouseCurves houses = nursery.curves(SimulatedNursery.START);
        return BackTest.of(batches, moment -> {
            houses.advanceTo(moment);
            return houses;
        });
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void walkingThroughTimeForecastsWhatAFreshLookFromEachDayWould(long seed) {
        var nursery = new SimulatedNursery(seed, Manner.usual(12));
        List<FinishedBatch> batches = simulated(nursery);

        for (Case each : walked(nursery, batches)) {
            FinishedBatch batch = batches.stream()
                    .filter(one -> one.id().equals(each.batch()))
                    .findFirst()
                    .orElseThrow();
            var fresh = OutlookModel.outlook(
                    batch.then().historyAt(each.origin()), PROFILE, TRAY, nursery.curves(each.origin()));
            assertThat(each.predicted()).isEqualTo(fresh.readyAt());
        }
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2})
    void theOrderOfTheBatchesDoesNotMatter(long seed) {
        var nursery = new SimulatedNursery(seed, Manner.usual(20));
        List<FinishedBatch> shuffled = new ArrayList<>(simulated(nursery));
        Collections.shuffle(shuffled, new Random(seed));

        assertThat(walked(nursery, shuffled)).isEqualTo(walked(nursery, simulated(nursery)));
    }

    /** Houses between 19 and 25 °C, so that counting days is far out; 150 batches of which the model knows the crop. */
    @Test
    void theModelIsNearerThanBothBaselinesAndItsRangesHoldWhatTheySay() {
        var nursery =
                new SimulatedNursery(7, Manner.usual(150).setpoints(19, 22, 25).rounds(2, true));
        Figures figures = Figures.of(walked(nursery, simulated(nursery)).stream()
                .filter(each -> each.leadDays() == 7)
                .toList());

        assertThat(figures.n()).isEqualTo(150);
        assertThat(figures.maeDays()).isLessThan(1.2);
        assertThat(figures.calendarSkill()).isGreaterThan(0.4);
        assertThat(figures.degreeDaysSkill()).isGreaterThan(0);
        // 80 % of 150 with four standard deviations: 100 to 140.
        assertThat(figures.coverage80()).isBetween(100 / 150.0, 140 / 150.0);
        assertThat(figures.coverage50()).isLessThan(figures.coverage80());
        assertThat(figures.coverage80()).isLessThanOrEqualTo(figures.coverage90());
    }

    @Test
    void withoutACaseNoFigureIsANumber() {
        Figures none = Figures.of(List.of());

        assertThat(none.n()).isZero();
        assertThat(none.maeDays()).isNaN();
        assertThat(none.promisedKept()).isNaN();
        assertThat(none.calendarSkill()).isNaN();
    }
}
