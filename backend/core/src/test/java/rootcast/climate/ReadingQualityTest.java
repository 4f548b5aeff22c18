package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Limits as in docs/models/climate-quality.md; the hours are worked by hand. */
class ReadingQualityTest {

    private static final Instant TEN = Instant.parse("2026-03-01T10:00:00Z");
    private static final long HOUR = HourlySeries.hourOf(TEN);
    private static final Set<QualityFlag.Key> NOTHING = Set.of();

    private final Map<String, SensorReadings> sensors = new HashMap<>();

    @Test
    void aSpikeIsNamedAndKeptOutOfTheHour() {
        everyMinute("a", 20, 20, 20, 20, 27, 20, 20);

        var hour = judge(Quantity.MEDIUM_TEMPERATURE);

        assertThat(hour.readings()).isEqualTo(6);
        assertThat(hour.leftOut()).isEqualTo(1);
        assertThat(mean(hour)).isCloseTo(20, within(1e-9));
        assertThat(hour.flags())
                .containsExactly(new QualityFlag(FlagKind.SPIKE, "a", TEN.plusSeconds(240), 27, 20, 4, true));
    }

    /** 1.4826 · 3 · 2 = 8.9 °C is more than the 4 °C that a quiet record is held to. */
    @Test
    void anUnquietRecordIsGivenMoreRoom() {
        everyMinute("a", 20, 24, 18, 22, 28, 20, 24);

        assertThat(judge(Quantity.AIR_TEMPERATURE).flags()).isEmpty();
    }

    @Test
    void aStepIsNamedAndUsed() {
        everyMinute("a", 20, 20, 20, 20, 24, 24, 24, 24);

        var hour = judge(Quantity.MEDIUM_TEMPERATURE);

        assertThat(hour.leftOut()).isZero();
        assertThat(hour.flags())
                .containsExactly(new QualityFlag(FlagKind.STEP, "a", TEN.plusSeconds(240), 24, 20, 3, false));
    }

    @Test
    void fewReadingsFarApartAreTakenAsTheyAre() {
        put("a", TEN, 20);
        put("a", TEN.plus(Duration.ofMinutes(20)), 28);
        put("a", TEN.plus(Duration.ofMinutes(40)), 20);

        assertThat(judge(Quantity.MEDIUM_TEMPERATURE).flags()).isEmpty();
    }

    @Test
    void aSensorThatStandsStillIsKeptOutOnlyWhereAnotherMoves() {
        halfADay("stuck", 21.3, 0);

        var alone = judge(Quantity.MEDIUM_TEMPERATURE);
        assertThat(alone.readings()).isEqualTo(1);
        assertThat(alone.flags())
                .singleElement()
                .satisfies(flag -> assertThat(flag.kind()).isEqualTo(FlagKind.FLAT_LINE))
                .satisfies(flag -> assertThat(flag.leftOut()).isFalse());

        halfADay("lively", 21, 0.1);
        var beside = judge(Quantity.MEDIUM_TEMPERATURE);
        assertThat(beside.readings()).isEqualTo(1);
        assertThat(mean(beside)).isCloseTo(22.1, within(1e-9));
        assertThat(beside.flags())
                .singleElement()
                .satisfies(flag -> assertThat(flag.sensor()).isEqualTo("stuck"));
    }

    @Test
    void elevenHoursOfOneValueAreNoFlatLineNorAreDarknessAndFog() {
        for (int hour = 0; hour < 11; hour++) {
            put("a", TEN.minus(Duration.ofHours(hour)), 21.3);
        }
        assertThat(judge(Quantity.MEDIUM_TEMPERATURE).flags()).isEmpty();

        sensors.clear();
        halfADay("dark", 0, 0);
        assertThat(judge(Quantity.LIGHT).flags()).isEmpty();

        sensors.clear();
        halfADay("fog", 98, 0);
        assertThat(judge(Quantity.RELATIVE_HUMIDITY).flags()).isEmpty();
    }

    @Test
    void ofThreeSensorsTheOneThatTheOthersContradictIsKeptOut() {
        put("a", TEN, 21);
        put("b", TEN, 21.4);
        put("c", TEN, 30);

        var hour = judge(Quantity.MEDIUM_TEMPERATURE);

        assertThat(mean(hour)).isCloseTo(21.2, within(1e-9));
        assertThat(hour.flags()).containsExactly(new QualityFlag(FlagKind.DISAGREEMENT, "c", TEN, 30, 21.4, 2, true));
    }

    @Test
    void ofTwoSensorsNobodyCanSayWhichIsRight() {
        put("a", TEN, 21);
        put("b", TEN, 25);

        var hour = judge(Quantity.MEDIUM_TEMPERATURE);

        assertThat(mean(hour)).isCloseTo(23, within(1e-9));
        assertThat(hour.flags()).hasSize(2).noneMatch(QualityFlag::leftOut);
    }

    @Test
    void whatIsOverriddenIsStillNamedAndUsed() {
        everyMinute("a", 20, 20, 20, 20, 27, 20, 20);
        var spike = judge(Quantity.MEDIUM_TEMPERATURE).flags().get(0);

        var hour = new ReadingQuality(Quantity.MEDIUM_TEMPERATURE, sensors).judge(HOUR, Set.of(spike.key()));

        assertThat(hour.readings()).isEqualTo(7);
        assertThat(mean(hour)).isCloseTo(21, within(1e-9));
        assertThat(hour.flags()).containsExactly(spike);
    }

    @Test
    void theHourDoesNotDependOnTheOrderOfArrival() {
        var random = new Random(11);
        record Sent(String sensor, Instant at, double value) {}
        for (int run = 0; run < 200; run++) {
            List<Sent> sent = new ArrayList<>();
            for (int i = 0; i < 300; i++) {
                double value = random.nextInt(10) == 0 ? 35 : 20 + random.nextInt(3);
                sent.add(new Sent(
                        "s" + random.nextInt(4), TEN.plusSeconds(random.nextInt(-46_000, 3_600) / 60 * 60), value));
            }
            // one value for each sensor and moment: a second one is not for these rules to settle
            Set<String> seen = new HashSet<>();
            sent.removeIf(each -> !seen.add(each.sensor() + each.at()));
            var inOrder = hourOf(sent.stream()
                    .map(s -> new Object[] {s.sensor(), s.at(), s.value()})
                    .toList());
            Collections.shuffle(sent, random);
            var shuffled = hourOf(sent.stream()
                    .map(s -> new Object[] {s.sensor(), s.at(), s.value()})
                    .toList());

            assertThat(shuffled).as("seed 11, run %d", run).isEqualTo(inOrder);
        }
    }

    /** What is judged again after a reading is enough: hours outside of it come out the same. */
    @Test
    void aReadingChangesNoHourThatItDoesNotReach() {
        var random = new Random(12);
        for (int run = 0; run < 100; run++) {
            sensors.clear();
            for (int minutes = -40 * 60; minutes < 40 * 60; minutes += 7) {
                for (String sensor : List.of("a", "b", "c")) {
                    double value = random.nextInt(8) == 0 ? 28 : sensor.equals("c") ? 21 : 20 + random.nextInt(2);
                    put(sensor, TEN.plus(Duration.ofMinutes(minutes)), value);
                }
            }
            Map<Long, ReadingQuality.Hour> before = allHours();
            Instant at = TEN.plusSeconds(random.nextInt(-3_600, 7_200));
            put("a", at, random.nextInt(10, 40));
            Map<Long, ReadingQuality.Hour> after = allHours();

            Set<Long> reached = ReadingQuality.reachedFrom(List.of(at));
            before.forEach((hour, judged) -> {
                if (!reached.contains(hour)) {
                    assertThat(after.get(hour)).as("seed 12, hour %d", hour).isEqualTo(judged);
                }
            });
            assertThat(after).isNotEqualTo(before);
        }
    }

    private Map<Long, ReadingQuality.Hour> allHours() {
        Map<Long, ReadingQuality.Hour> hours = new HashMap<>();
        for (long hour = HOUR - 38; hour < HOUR + 38; hour++) {
            hours.put(hour, new ReadingQuality(Quantity.MEDIUM_TEMPERATURE, sensors).judge(hour, NOTHING));
        }
        return hours;
    }

    private static ReadingQuality.Hour hourOf(List<Object[]> sent) {
        Map<String, SensorReadings> sensors = new HashMap<>();
        sent.forEach(each -> sensors.computeIfAbsent((String) each[0], any -> new SensorReadings())
                .put((Instant) each[1], (Double) each[2]));
        return new ReadingQuality(Quantity.MEDIUM_TEMPERATURE, sensors).judge(HOUR, NOTHING);
    }

    private void halfADay(String sensor, double value, double risePerHour) {
        for (int hour = 0; hour < 12; hour++) {
            put(sensor, TEN.minus(Duration.ofHours(11 - hour)), value + hour * risePerHour);
        }
    }

    private void everyMinute(String sensor, double... values) {
        for (int i = 0; i < values.length; i++) {
            put(sensor, TEN.plusSeconds(60L * i), values[i]);
        }
    }

    private void put(String sensor, Instant at, double value) {
        sensors.computeIfAbsent(sensor, any -> new SensorReadings()).put(at, value);
    }

    private ReadingQuality.Hour judge(Quantity quantity) {
        return new ReadingQuality(quantity, sensors).judge(HOUR, NOTHING);
    }

    private static double mean(ReadingQuality.Hour hour) {
        return hour.totalMicro() / 1e6 / hour.readings();
    }
}
