package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.BatchHistory.Placement;

/**
 * Median dates against an integration written here, in steps of one minute, with the equations written out again.
 *
 * <p>It reads the temperature of a minute straight from the readings; it knows no hours, curves or sums.
 */
class NumericalIntegrationTest {

    private record Reading(Instant at, double celsius) {}

    private static double beta(double t, double min, double opt, double max) {
        return t <= min || t >= max
                ? 0
                : (max - t) / (max - opt) * Math.pow((t - min) / (opt - min), (opt - min) / (max - opt));
    }

    private static double callusing(double celsius) {
        return beta(celsius, 8, 27, 36) / beta(22, 8, 27, 36) / 7;
    }

    private static double rooting(double celsius) {
        return beta(celsius, 10, 26, 35) / beta(22, 10, 26, 35) / 9;
    }

    private static double toning(double celsius) {
        double linear = celsius <= 5 || celsius >= 36 ? 0 : Math.min(celsius, 24) - 5;
        return linear / 17 / 10;
    }

    /** Days from sticking to the end of each stage, minute by minute. */
    private static double[] integrate(ToDoubleFunction<Instant> temperature) {
        double[] ends = new double[3];
        double progress = 0;
        int stage = 0;
        for (int minute = 0; stage < 3; minute++) {
            double celsius = temperature.applyAsDouble(STUCK.plusSeconds(60L * minute + 30));
            double perDay = stage == 0 ? callusing(celsius) : stage == 1 ? rooting(celsius) : toning(celsius);
            progress += perDay / 1_440;
            if (progress >= 1) {
                ends[stage++] = (minute + 1) / 1_440.0;
                progress = 0;
            }
        }
        return ends;
    }

    private static void shouldAgree(Outlook outlook, double[] ends, String with) {
        assertThat(daysAfterSticking(outlook.callusedAt().p50())).as(with).isCloseTo(ends[0], within(0.1));
        assertThat(daysAfterSticking(outlook.rootedAt().p50())).as(with).isCloseTo(ends[1], within(0.1));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).as(with).isCloseTo(ends[2], within(0.1));
    }

    /** A house that wanders: a daily wave on a slow one, and readings every ten minutes. */
    private static List<Reading> readings(Random random, double days) {
        double level = random.nextDouble(17, 26);
        double wave = random.nextDouble(0, 6);
        double drift = random.nextDouble(-4, 4);
        List<Reading> readings = new ArrayList<>();
        Instant start = STUCK.minus(Duration.ofHours(5));
        for (int i = 0; i < days * 144; i++) {
            double day = i / 144.0;
            double celsius = level
                    + wave * Math.sin(2 * Math.PI * day)
                    + drift * Math.sin(day / 4)
                    + random.nextGaussian() * 0.4;
            readings.add(new Reading(start.plus(Duration.ofMinutes(10L * i)), celsius));
        }
        return readings;
    }

    private static double at(List<Reading> readings, Instant instant) {
        long index = Duration.between(readings.get(0).at(), instant).toMinutes() / 10;
        return readings.get((int) index).celsius();
    }

    private static HourlySeries seriesOf(List<Reading> readings) {
        var series = new HourlySeries();
        readings.forEach(reading -> series.add(reading.at(), reading.celsius()));
        return series;
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void arbitraryReadingsInAnyOrder(long seed) {
        var readings = readings(new Random(seed), 90);
        double[] ends = integrate(instant -> at(readings, instant));
        List<Reading> arrived = new ArrayList<>(readings);
        Collections.shuffle(arrived, new Random(seed));

        var houses = GrowerFixture.houses(days(80), "A", seriesOf(arrived));

        shouldAgree(OutlookModel.outlook(batch("A"), CROP, TRAY_105, houses), ends, "seed " + seed);
    }

    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23, 24, 25})
    void aBatchThatMovesTwice(long seed) {
        var random = new Random(seed);
        var inA = readings(random, 90);
        var inB = readings(random, 90);
        Instant toB = days(random.nextDouble(2, 10));
        Instant backToA = toB.plus(Duration.ofMinutes(random.nextInt(1_000, 9_000)));
        double[] ends =
                integrate(instant -> at(instant.isBefore(toB) || !instant.isBefore(backToA) ? inA : inB, instant));

        var houses = GrowerFixture.houses(days(80), "A", seriesOf(inA));
        houses.house("B", seriesOf(inB), SetpointPlan.none());
        var moved = batch(
                Map.of(), List.of(new Placement("A", STUCK), new Placement("B", toB), new Placement("A", backToA)));

        shouldAgree(OutlookModel.outlook(moved, CROP, TRAY_105, houses), ends, "seed " + seed);
    }

    @ParameterizedTest
    @ValueSource(longs = {31, 32, 33})
    void readingsThatComeLateMoveTheDate(long seed) {
        var readings = readings(new Random(seed), 90);
        double[] ends = integrate(instant -> at(readings, instant));
        List<Reading> late = readings.subList(600, 2_000);
        List<Reading> inTime = new ArrayList<>(readings);
        inTime.removeAll(late);
        var series = seriesOf(inTime);
        var houses = GrowerFixture.houses(days(80), "A", series);
        OutlookModel.outlook(batch("A"), CROP, TRAY_105, houses);

        for (Reading reading : late) {
            series.add(reading.at(), reading.celsius());
            houses.changed("A", reading.at());
        }

        shouldAgree(OutlookModel.outlook(batch("A"), CROP, TRAY_105, houses), ends, "seed " + seed);
    }

    /**
     * Real hourly temperatures outdoors (NOAA normals, see SOURCE.md beside the file) with the medium heated to 20 °C at
     * least: medium = max(20 °C, outdoors).
     */
    @Test
    void theMediumOverARealSummer() throws IOException {
        List<Reading> medium = new ArrayList<>();
        for (String line : lines("/rootcast/climate/hourly-normals-june-to-september.csv")) {
            String[] fields = line.split(",");
            Instant at = LocalDateTime.parse(fields[0]).toInstant(ZoneOffset.ofHours(-8));
            medium.add(new Reading(at, Math.max(20, Double.parseDouble(fields[1]))));
        }
        Duration shift = Duration.between(medium.get(240).at(), STUCK);
        medium.replaceAll(reading -> new Reading(reading.at().plus(shift), reading.celsius()));
        double[] ends = integrate(instant -> medium.get((int)
                        (240 + Math.floorDiv(Duration.between(STUCK, instant).toMinutes(), 60L)))
                .celsius());

        var houses = GrowerFixture.houses(days(60), "A", seriesOf(medium));
        var outlook = OutlookModel.outlook(batch("A"), CROP, TRAY_105, houses);

        shouldAgree(outlook, ends, "real summer");
        assertThat(outlook.missingHours()).isZero();
        // Ten days in, the rest from the pattern of the last seven: the summer is steady, so it is near already.
        houses.advanceTo(days(10));
        var early = OutlookModel.outlook(batch("A"), CROP, TRAY_105, houses);
        assertThat(daysAfterSticking(early.readyAt().p50())).isCloseTo(ends[2], within(1.0));
    }

    private static List<String> lines(String resource) throws IOException {
        try (InputStream in = NumericalIntegrationTest.class.getResourceAsStream(resource)) {
            String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
            return text.lines().skip(1).toList();
        }
    }
}
