package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
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
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.DateExplanation.Cause;
import rootcast.outlook.DateExplanation.Part;

/** At 22 °C, the set-point here, development runs at the profile's days: 7, 9 and 10. */
class ExplanationModelTest {

    private static final SetpointPlan AT_22 = SetpointPlan.of(22.0);

    private static final CropProfile TWELVE_DAYS_OF_TONING = new CropProfile(
                    List.of(
                            CROP.of(Stage.STICK),
                            CROP.of(Stage.CALLUS),
                            new StageProfile(Stage.ROOT, 12, GrowerFixture.TONING, 0.98, 150)),
                    0.1,
                    8)
            .varying(Variation.USUAL.withDaysKnown().entering(0));

    private static HourlySeries readings(double fromDay, double untilDay, double celsius, HourlySeries into) {
        for (Instant at = days(fromDay); at.isBefore(days(untilDay)); at = at.plus(Duration.ofMinutes(30))) {
            into.add(at, celsius);
        }
        return into;
    }

    private static HouseCurves house(double asOfDay, HourlySeries series) {
        var houses = new HouseCurves(days(asOfDay));
        houses.house("A", series, AT_22);
        return houses;
    }

    private static DateExplanation explain(BatchHistory history, CropProfile planned, HouseCurves houses) {
        return ExplanationModel.explain(
                BatchOutlook.of(history, CROP, TRAY_105, houses), planned, houses, ZoneOffset.UTC);
    }

    @Test
    void aBatchOnPlanHasNothingToExplain() {
        var explanation = explain(batch("A"), CROP, house(10, readings(-3, 10, 22, new HourlySeries())));

        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(26, within(1e-6));
        assertThat(explanation.differenceDays()).isCloseTo(0, within(1e-6));
        assertThat(explanation.parts())
                .allSatisfy(part -> assertThat(part.days()).isCloseTo(0, within(1e-6)));
    }

    /**
     * Stuck on 2 March at 15:00. While it tones (LINEAR, 5 to 24 °C: half speed at 13.5), the 20th of March is cold for
     * its 24 hours: half a day is lost. The pattern of the last seven days expects 22 − 8.5/7 °C from then on.
     */
    @Test
    void theColdDayIsNamedWithWhatItCost() {
        var series = readings(-3, 17.375, 22, new HourlySeries());
        readings(17.375, 18.375, 13.5, series);
        readings(18.375, 30, 22, series);

        var explanation = explain(batch("A"), CROP, house(30, series));

        Part cold = explanation.parts().stream()
                .filter(part -> part.on() != null)
                .reduce((a, b) -> {
                    throw new AssertionError(a + " and " + b);
                })
                .orElseThrow();
        assertThat(cold.on()).isEqualTo(LocalDate.parse("2026-03-20"));
        assertThat(cold.cause()).isEqualTo(Cause.TEMPERATURE);
        assertThat(cold.days()).isCloseTo(0.5, within(1e-6));
        assertThat(cold.actualC()).isCloseTo(13.5, within(1e-6));
        assertThat(cold.plannedC()).isEqualTo(22);
        assertThat(explanation.differenceDays()).isCloseTo(0.5, within(1e-6));
    }

    /** Planned with ten days of toning, computed with eight: two days earlier. */
    @Test
    void anotherVersionOfTheProfileIsAPartOfItsOwn() {
        var explanation =
                explain(batch("A"), TWELVE_DAYS_OF_TONING, house(10, readings(-3, 10, 22, new HourlySeries())));

        assertThat(explanation.parts().get(0).cause()).isEqualTo(Cause.PROFILE_VERSION);
        assertThat(explanation.parts().get(0).days()).isCloseTo(-2, within(1e-6));
        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(28, within(1e-6));
    }

    private static double daysFor(DateExplanation explanation, Cause cause) {
        return explanation.parts().stream()
                .filter(part -> part.cause() == cause)
                .mapToDouble(Part::days)
                .sum();
    }

    /**
     * Everything at once, each by hand. Planned with twelve days of toning, computed with ten: two days earlier. Of the cold 20th of
     * March two hours around noon have no reading and are bridged by their neighbours, as cold: the 22 measured hours at half
     * speed cost 11 hours, the two bridged ones one. It was seen ready on day 27.25, when the hours as they were had it ready
     * after 26.5 days.
     */
    @Test
    void eachCauseHasItsOwnShareWhenAllOfThemAreAtWork() {
        var series = readings(-3, 17.375, 22, new HourlySeries());
        readings(17.375, 17.875, 13.5, series);
        readings(17.875 + 2 / 24.0, 18.375, 13.5, series);
        readings(18.375, 30, 22, series);
        var history = batch(Map.of(Stage.READY, days(27.25)), List.of(new Placement("A", STUCK)));

        var explanation = explain(history, TWELVE_DAYS_OF_TONING, house(30, series));

        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(28, within(1e-6));
        assertThat(daysFor(explanation, Cause.PROFILE_VERSION)).isCloseTo(-2, within(1e-6));
        assertThat(daysFor(explanation, Cause.TEMPERATURE)).isCloseTo(11 / 24.0, within(1e-6));
        assertThat(daysFor(explanation, Cause.GAP_FILLING)).isCloseTo(1 / 24.0, within(1e-6));
        assertThat(daysFor(explanation, Cause.FORECAST)).isCloseTo(0, within(1e-6));
        assertThat(daysFor(explanation, Cause.RATE_SEEN)).isCloseTo(0.75, within(1e-6));
    }

    /**
     * What was seen of the rate is what the other parts leave over, so it takes in whatever they get wrong. Of batches of which
     * nothing was seen it must be nothing: the parts before it, computed hour by hour, then lead to the hour of the outlook's
     * date, which comes from the houses' curves.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void whereNothingWasSeenOfTheRateNothingIsLeftOver(long seed) {
        var random = new Random(seed);
        int explained = 0;
        for (int run = 0; run < 60; run++) {
            double asOf = random.nextDouble(1, 40);
            var houses = new HouseCurves(days(asOf));
            houses.house("A", randomSeries(random, asOf), random.nextBoolean() ? AT_22 : SetpointPlan.none());
            houses.house("B", randomSeries(random, asOf), SetpointPlan.of(20.0));
            var explanation = explain(batch(Map.of(), someMove(random, asOf)), CROP, houses);

            assertThat(daysFor(explanation, Cause.RATE_SEEN))
                    .as("seed %d run %d", seed, run)
                    .isCloseTo(0, within(1 / 24.0));
            explained += Math.abs(explanation.differenceDays()) > 0.1 ? 1 : 0;
        }
        assertThat(explained).as("batches off their plan").isGreaterThan(30);
    }

    /** House B tones at its set-point, by two readings an hour: 13.5 °C, half speed. */
    private static HouseCurves withToning(double asOfDay, HourlySeries toning) {
        var houses = house(asOfDay, readings(-3, asOfDay, 22, new HourlySeries()));
        houses.house("B", toning, SetpointPlan.of(13.5));
        return houses;
    }

    private static BatchHistory carried(double onDay) {
        return batch(
                Map.of(Stage.CALLUS, days(7), Stage.ROOT, days(16)),
                List.of(new Placement("A", STUCK), new Placement("B", days(onDay))));
    }

    /** Rooted after 16 days, then 10 days' worth at half speed: planned and expected on day 36, not ten days late. */
    @Test
    void theMoveToTheToningHouseOnceRootedIsPartOfThePlan() {
        // All batches run alike, so one entered rooted was rooted on that very day.
        CropProfile alike = GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150);
        HouseCurves houses = withToning(30, readings(-3, 30, 13.5, new HourlySeries()));
        var explanation = ExplanationModel.explain(
                BatchOutlook.of(carried(16), alike, TRAY_105, houses), alike, houses, ZoneOffset.UTC);

        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(36, within(1e-6));
        assertThat(explanation.differenceDays()).isCloseTo(0, within(1e-6));
        assertThat(explanation.parts())
                .filteredOn(part -> part.cause() == Cause.TEMPERATURE)
                .allSatisfy(part -> assertThat(part.days()).isCloseTo(0, within(1e-6)));
    }

    /** Five days after sticking nobody has carried it yet; it is planned and expected on day 36 all the same. */
    @Test
    void theUsualMoveThatIsStillToComeIsPartOfThePlan() {
        var houses = withToning(5, readings(-3, 5, 13.5, new HourlySeries()));
        houses.usualMove("A", new UsualMove(Stage.ROOT, "B"));

        var explanation = explain(batch("A"), CROP, houses);

        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(36, within(1e-6));
        assertThat(explanation.differenceDays()).isCloseTo(0, within(1e-6));
        assertThat(daysFor(explanation, Cause.FORECAST)).isCloseTo(0, within(1e-6));
    }

    /** On the plot likewise: of the ten days of the last stage 5 are done 10 days after rooting. */
    @Test
    void thePlannedCourseKnowsTheMoveToo() {
        var plan = ExplanationModel.plan(carried(16), CROP, withToning(30, readings(-3, 30, 13.5, new HourlySeries())));

        assertThat(plan.stream().filter(point -> point.at().equals(days(26))).map(PlannedPoint::progress))
                .singleElement()
                .satisfies(progress -> assertThat(progress).isCloseTo(2.5, within(1e-6)));
    }

    /**
     * Day 20 to 21 at 9.25 °C, a quarter of full speed, where half was planned: 0.25 days' worth lost, which take half a
     * day at 13.5. Measured against the house it stands in, not the one it was stuck in. 2 March 15:00 and 18.375 days
     * are the 21st at midnight.
     */
    @Test
    void aColdDayInTheToningHouseIsHeldAgainstThatHousesSetPoint() {
        var series = readings(-3, 18.375, 13.5, new HourlySeries());
        readings(18.375, 19.375, 9.25, series);
        readings(19.375, 30, 13.5, series);

        var explanation = explain(carried(16), CROP, withToning(30, series));

        Part cold = explanation.parts().stream()
                .filter(part -> part.on() != null)
                .reduce((a, b) -> {
                    throw new AssertionError(a + " and " + b);
                })
                .orElseThrow();
        assertThat(cold.on()).isEqualTo(LocalDate.parse("2026-03-21"));
        assertThat(cold.days()).isCloseTo(0.5, within(1e-6));
        assertThat(cold.actualC()).isCloseTo(9.25, within(1e-6));
        assertThat(cold.plannedC()).isEqualTo(13.5);
    }

    /** Carried on day 12 with roots still to form: that was not the plan, which stays at 7 + 9 + 10 days. */
    @Test
    void aMoveBeforeRootsAreThereLeavesThePlan() {
        var explanation = explain(carried(12), CROP, withToning(30, readings(-3, 30, 13.5, new HourlySeries())));

        assertThat(daysAfterSticking(explanation.plannedAt())).isCloseTo(26, within(1e-6));
        assertThat(explanation.differenceDays()).isGreaterThan(5);
    }

    /** The last seven days ran at 13.5 °C and the batch tones from day 16 on: half speed for ten days, ten days more. */
    @Test
    void hoursToComeAtAnotherTemperatureAreForecast() {
        var series = readings(-3, 9, 22, new HourlySeries());
        var rooted = batch(Map.of(Stage.ROOT, days(16)), List.of(new Placement("A", STUCK)));
        readings(9, 16, 13.5, series);

        var explanation = explain(rooted, CROP, house(16, series));

        assertThat(explanation.parts()).extracting(Part::cause).contains(Cause.FORECAST);
        assertThat(daysAfterSticking(explanation.readyAt())).isGreaterThan(30);
    }

    @Test
    void whatIsNeverReadyHasNoParts() {
        var cold = new HouseCurves(days(5));
        cold.house("A", readings(-3, 5, 4, new HourlySeries()), AT_22);

        var explanation = explain(batch("A"), CROP, cold);

        assertThat(explanation.readyAt()).isEqualTo(DateDistribution.NEVER);
        assertThat(explanation.parts()).isEmpty();
    }

    /** Gaps, cold spells, moves, looks and stages of any kind, 60 batches a seed. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void thePartsAddUpForRandomBatches(long seed) {
        var random = new Random(seed);
        for (int run = 0; run < 60; run++) {
            double asOf = random.nextDouble(1, 40);
            var houses = new HouseCurves(days(asOf));
            houses.house("A", randomSeries(random, asOf), random.nextBoolean() ? AT_22 : SetpointPlan.none());
            houses.house("B", randomSeries(random, asOf), SetpointPlan.of(20.0));
            var explanation = explain(randomHistory(random, asOf), CROP, houses);

            double difference = Duration.between(explanation.plannedAt(), explanation.readyAt())
                            .toMillis()
                    / 86_400_000.0;
            assertThat(explanation.differenceDays())
                    .as("seed %d run %d", seed, run)
                    .isCloseTo(difference, within(1e-6));
        }
    }

    private static HourlySeries randomSeries(Random random, double asOf) {
        var series = new HourlySeries();
        double celsius = 21;
        for (double day = -2; day < asOf; day += 1 / 24.0) {
            celsius += random.nextGaussian() * 0.3 + (21 - celsius) * 0.02;
            if (random.nextInt(10) > 0) {
                series.add(days(day), celsius);
            }
        }
        return series;
    }

    private static BatchHistory randomHistory(Random random, double asOf) {
        Map<Stage, Instant> seen = new HashMap<>();
        if (asOf > 10 && random.nextBoolean()) {
            seen.put(Stage.CALLUS, days(random.nextDouble(4, 9)));
        }
        if (asOf > 22 && random.nextBoolean()) {
            seen.put(Stage.ROOT, days(random.nextDouble(14, 20)));
        }
        if (asOf > 30 && random.nextBoolean()) {
            seen.put(Stage.READY, days(random.nextDouble(23, 29)));
        }
        Instant rooted = seen.get(Stage.ROOT);
        List<Placement> placements = rooted != null && random.nextBoolean()
                ? List.of(new Placement("A", STUCK), new Placement("B", rooted.plusSeconds(random.nextInt(86_400))))
                : someMove(random, asOf);
        List<Look> looks = asOf > 6
                ? List.of(new Look(days(random.nextDouble(1, 6)), Stage.CALLUS, 40, random.nextInt(41)))
                : List.of();
        return new BatchHistory(STUCK, seen, placements, new Plants(STUCK, 1_050), List.of(), List.of(), null, looks);
    }

    private static List<Placement> someMove(Random random, double asOf) {
        return asOf > 12 && random.nextBoolean()
                ? List.of(new Placement("A", STUCK), new Placement("B", days(random.nextDouble(2, 12))))
                : List.of(new Placement("A", STUCK));
    }
}
