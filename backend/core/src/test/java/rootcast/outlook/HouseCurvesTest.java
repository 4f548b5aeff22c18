package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CALLUSING;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TONING;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.days;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;

class HouseCurvesTest {

    /** Gaps, late readings, steps forward and back in time: at each point curves made afresh must say the same. */
    @ParameterizedTest
    @ValueSource(longs = {101, 102, 103, 104, 105, 106})
    void curvesBroughtUpToDateAreThoseMadeAfreshToTheLastBit(long seed) {
        var random = new Random(seed);
        var series = new HourlySeries();
        var houses = new HouseCurves(STUCK);
        Double setpointC = seed % 2 == 0 ? null : 21.5;
        houses.house("A", series, SetpointPlan.of(setpointC));
        long hour = HourlySeries.hourOf(STUCK);
        for (int step = 0; step < 400; step++) {
            int readings = random.nextInt(0, 6);
            for (int i = 0; i < readings; i++) {
                boolean late = random.nextInt(8) == 0;
                Instant at = HourlySeries.startOf(late ? hour - random.nextInt(900) : hour - random.nextInt(6))
                        .plusSeconds(random.nextInt(3_600));
                series.add(at, random.nextDouble(5, 38));
                houses.changed("A", at);
            }
            hour += random.nextInt(20) == 0 ? -random.nextInt(600) : random.nextInt(5);
            houses.advanceTo(HourlySeries.startOf(hour).plusSeconds(random.nextInt(3_600)));
            var fresh = new HouseCurves(houses.asOf());
            fresh.house("A", series, SetpointPlan.of(setpointC));

            shouldBeEqual(houses, fresh, CALLUSING, random, "seed %d step %d".formatted(seed, step));
            shouldBeEqual(houses, fresh, TONING, random, "seed %d step %d".formatted(seed, step));
        }
    }

    private static void shouldBeEqual(
            HouseCurves houses, HouseCurves fresh, Cardinals cardinals, Random random, String with) {
        var curve = houses.curve("A", cardinals, STUCK.minus(Duration.ofDays(random.nextInt(60))));
        var made = fresh.curve("A", cardinals, STUCK.minus(Duration.ofDays(70)));
        long from = STUCK.toEpochMilli() + random.nextLong(0, 3_000_000_000L);
        long to = from + random.nextLong(0, 5_000_000_000L);
        double need = random.nextDouble(0, 30);

        assertThat(Double.doubleToLongBits(curve.between(from, to)))
                .as(with)
                .isEqualTo(Double.doubleToLongBits(made.between(from, to)));
        assertThat(curve.reach(from, need)).as(with).isEqualTo(made.reach(from, need));
    }

    /** Day 8 is bridged from day 20, which nobody knew on day 15. */
    @Test
    void steppingBackInTimeForgetsWhatWasBridgedFromLaterReadings() {
        var series = GrowerFixture.constant(30, days(20), days(30));
        var houses = GrowerFixture.houses(days(30), "A", series);
        long from = days(7).toEpochMilli();
        long to = days(9).toEpochMilli();
        assertThat(houses.curve("A", CALLUSING, STUCK).between(from, to)).isGreaterThan(2.1);

        houses.advanceTo(days(15));

        assertThat(houses.curve("A", CALLUSING, STUCK).between(from, to)).isCloseTo(2, within(1e-9));
    }

    @Test
    void reachAndBetweenUndoEachOther() {
        var random = new Random(5);
        var series = new HourlySeries();
        for (int hour = 0; hour < 24 * 40; hour++) {
            series.add(STUCK.plus(Duration.ofHours(hour)), random.nextDouble(2, 34));
        }
        var curve = GrowerFixture.houses(days(40), "A", series).curve("A", CALLUSING, STUCK);
        for (int run = 0; run < 2_000; run++) {
            long from = STUCK.toEpochMilli() + random.nextLong(0, 80L * 86_400_000);
            double need = random.nextDouble(0, 40);

            long reached = curve.reach(from, need);

            assertThat(curve.between(from, reached)).as("seed 5 run %d", run).isCloseTo(need, within(1e-6));
        }
    }

    @Test
    void nothingToGainIsReachedAtOnce() {
        var curve = new HouseCurves(STUCK);
        curve.house("A", new HourlySeries(), SetpointPlan.of(21.0));

        assertThat(curve.curve("A", CALLUSING, STUCK).reach(STUCK.toEpochMilli(), 0))
                .isEqualTo(STUCK.toEpochMilli());
    }

    @Test
    void anOutlookAsOfAPastInstantIgnoresLaterReadings() {
        var known = GrowerFixture.constant(22, STUCK, days(6));
        var then = OutlookModel.outlook(batch("A"), CROP, TRAY_105, GrowerFixture.houses(days(6), "A", known));
        var later = GrowerFixture.constant(22, STUCK, days(6));
        for (int hour = 0; hour < 200; hour++) {
            later.add(days(6).plus(Duration.ofHours(hour)), 33);
        }

        var asOf = OutlookModel.outlook(batch("A"), CROP, TRAY_105, GrowerFixture.houses(days(6), "A", later));

        assertThat(asOf.readyAt()).isEqualTo(then.readyAt());
        assertThat(OutlookModel.outlook(batch("A"), CROP, TRAY_105, GrowerFixture.houses(days(9), "A", later))
                        .readyAt())
                .isNotEqualTo(then.readyAt());
    }
}
