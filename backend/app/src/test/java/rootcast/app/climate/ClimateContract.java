package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Flags, derived quantities and readings purged, seen from outside. */
abstract class ClimateContract extends ClimateRequests {

    private static final long SEED = 20260305;

    @Inject
    AgroalDataSource database;

    @Inject
    PurgeReadings purge;

    /** FAO-56: e°(25 °C) 3.168 kPa (V2), half of it at 50 %; dew point 13.86 °C (C). */
    @Test
    void deficitAndDewPointFollowFromAirAndHumidity() {
        take(List.of(reading("air-temperature", hour, 25), reading("relative-humidity", hour, 50)));
        take(List.of(reading("air-temperature", hour.plusSeconds(3600), 25)));

        JsonPath deficit = climate("vapour-pressure-deficit", hour, 2);
        assertThat(deficit.getString("unit")).isEqualTo("kPa");
        assertThat(deficit.getList("hours")).hasSize(1);
        assertThat(deficit.getDouble("hours[0].value")).isCloseTo(1.584, within(0.001));
        assertThat(climate("dew-point", hour, 2).getDouble("hours[0].value")).isCloseTo(13.86, within(0.05));
    }

    /** Extension table (V): 500 µmol for 12 hours are 21.6 mol. */
    @Test
    void lightAddsUpToTheDayOfTheSite() {
        Instant midnight = time.instant().truncatedTo(ChronoUnit.DAYS).minus(Duration.ofDays(1));
        List<Map<String, Object>> day = new ArrayList<>();
        for (int h = 0; h < 24; h++) {
            day.add(reading("light", midnight.plus(Duration.ofHours(h)), h >= 6 && h < 18 ? 500 : 0));
        }
        take(day);

        JsonPath light = climate("daily-light-integral", midnight, 24);
        assertThat(light.getList("hours")).hasSize(1);
        assertThat(Instant.parse(light.getString("hours[0].at"))).isEqualTo(midnight);
        assertThat(light.getDouble("hours[0].value")).isCloseTo(21.6, within(1e-6));
    }

    @Test
    void aBrokenProbeIsKeptAsideWithItsReason() {
        take(List.of(medium(hour, 21), medium(hour.plusSeconds(60), -127)))
                .body("accepted", equalTo(1))
                .body("rejected[0].flag", equalTo("range"));

        JsonPath climate = climate("medium-temperature", hour, 1);
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(21, within(1e-9));
        assertThat(climate.getList("flags.kind")).containsExactly("range");
        assertThat(climate.getDouble("flags[0].why.values.value")).isEqualTo(-127);
        assertThat(climate.getDouble("flags[0].why.values.expected")).isEqualTo(-10);
    }

    @Test
    void anotherValueForTheSameMomentIsKeptAsideAndCanBeBroughtIn() {
        take(List.of(medium(hour, 20)));
        take(List.of(medium(hour, 24), medium(hour.plusSeconds(60), 20)))
                .body("rejected[0].flag", equalTo("duplicate"));
        assertThat(meanOf(hour)).isCloseTo(20, within(1e-9));
        JsonPath flags = climate("medium-temperature", hour, 1);
        String id = flags.getString("flags[0].id");

        say(id, "override", Map.of("reason", "the logger was set later"))
                .statusCode(200)
                .body("flags", equalTo(1));
        assertThat(meanOf(hour)).isCloseTo(22, within(1e-9));
        JsonPath after = climate("medium-temperature", hour, 1);
        assertThat(after.getBoolean("flags[0].overridden")).isTrue();
        assertThat(after.getString("flags[0].overrideReason")).isEqualTo("the logger was set later");
        take(List.of(medium(hour, 20), medium(hour.plusSeconds(61), 22))).body("duplicates", equalTo(1));

        say(id, "restore", Map.of("reason", "it was not")).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(62 / 3.0, within(1e-6));
    }

    @Test
    void aSpikeIsTakenOutOnceItsNeighboursAreThereAndCanBeOverridden() {
        double[] values = {20, 20, 28, 20, 20, 20};
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            readings.add(medium(hour.plusSeconds(60L * i), values[i]));
        }
        take(readings.subList(0, 3));
        assertThat(meanOf(hour)).isCloseTo(68 / 3.0, within(1e-6));
        take(readings.subList(3, 6));
        assertThat(meanOf(hour)).isCloseTo(20, within(1e-9));

        String id = climate("medium-temperature", hour, 1).getString("flags.find { it.kind == 'spike' }.id");
        say(id, "override", Map.of("reason", "the door stood open")).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(128 / 6.0, within(1e-6));
    }

    @Test
    void aFlagNeedsAReasonAndMustBeThere() {
        say("00000000-0000-0000-0000-000000000001", "override", Map.of("reason", "x"))
                .statusCode(404);
        say("no-id", "restore", Map.of("reason", "x")).statusCode(404);
        say("00000000-0000-0000-0000-000000000001", "override", Map.of("reason", " "))
                .statusCode(400);
    }

    @Test
    void threeProbesAreHeardAndTheOneThatStandsAloneIsNot() {
        for (String each : List.of("a", "b", "c")) {
            sensor(each, "medium-temperature", "Cel", Map.of()).statusCode(201);
        }
        take(List.of(
                with(medium(hour, 21), Map.of("sensor", code("a"))),
                with(medium(hour, 22), Map.of("sensor", code("b"))),
                with(medium(hour, 35), Map.of("sensor", code("c")))));

        JsonPath climate = climate("medium-temperature", hour, 1);
        assertThat(climate.getDouble("hours[0].value")).isCloseTo(21.5, within(1e-9));
        assertThat(climate.getString("flags[0].kind")).isEqualTo("disagreement");
        assertThat(climate.getString("flags[0].sensor")).isEqualTo(code("c"));
        JsonPath health = Nursery.get("/api/houses/" + nursery.house + "/sensors");
        assertThat(health.getInt("find { it.sensor == '" + code("c") + "' }.flags.disagreement"))
                .isEqualTo(1);
    }

    @Test
    void anyOrderOfArrivalGivesTheSameHoursAndFlags() {
        var random = new Random(SEED);
        Nursery other = Nursery.opened(time);
        List<Map<String, Object>> readings = new ArrayList<>();
        for (int i = 0; i < 600; i++) {
            double value = random.nextInt(12) == 0 ? 33 : 21 + random.nextInt(3);
            readings.add(medium(hour.plusSeconds(20L * i), value));
        }
        for (int from = 0; from < 600; from += 200) {
            take(readings.subList(from, from + 200));
        }
        List<Map<String, Object>> shuffled = new ArrayList<>();
        readings.forEach(each -> shuffled.add(with(each, Map.of("house", other.house))));
        Collections.shuffle(shuffled, random);
        for (int from = 0; from < 600; from += 60) {
            take(shuffled.subList(from, from + 60));
        }

        JsonPath inOrder = climate("medium-temperature", hour, 4);
        JsonPath mixed = Nursery.get(path(other.house, "medium-temperature", hour, 4));
        assertThat(mixed.getList("hours")).as("seed %d", SEED).isEqualTo(inOrder.getList("hours"));
        assertThat(mixed.getList("flags.why")).isEqualTo(inOrder.getList("flags.why"));
        assertThat(inOrder.getList("flags.kind")).contains("spike");
    }

    @Test
    void purgedReadingsLeaveTheirHours() throws Exception {
        take(List.of(medium(hour, 20), medium(hour.plusSeconds(60), 22)));
        new Tables(database)
                .execute(
                        "update reading set recorded_at = timestamp with time zone '2020-01-01 00:00:00+00' where house = '"
                                + nursery.house + "'");

        assertThat(purge.purge()).isEqualTo(2);
        assertThat(purge.purge()).isZero();

        assertThat(meanOf(hour)).isCloseTo(21, within(1e-9));
        take(List.of(medium(hour, 20))).statusCode(422).body("rejected[0].reason", containsString("purged"));
        take(List.of(medium(hour.plusSeconds(3600), 25))).statusCode(200);
        assertThat(meanOf(hour)).isCloseTo(21, within(1e-9));
    }
}
