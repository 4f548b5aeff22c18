package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SimulatorTest {

    private static final Instant START = DemoSeed.WEDNESDAY_IN_NOVEMBER;

    private final DemoScenario scenario = DemoSeed.scenario();

    @Test
    void overAWholeYearNoMediumLeavesWhatAHouseDoes() {
        Simulator simulator = scenario.resumedAt(Instant.parse("2026-01-01T00:00:00Z"));
        MediumHistory year =
                simulator.hoursUntil(Instant.parse("2027-01-01T00:00:00Z")).medium();

        for (DemoSetup.Building house : scenario.setup().houses()) {
            List<Double> mediumC = year.hourlyC().get(house.code());
            assertThat(mediumC)
                    .as(house.code())
                    .hasSize(8_759)
                    .allMatch(c -> c < 34 && c > house.mediumSetpointC() - 1);
            assertThat(IntStream.range(1, mediumC.size())
                            .mapToDouble(hour -> Math.abs(mediumC.get(hour) - mediumC.get(hour - 1)))
                            .max()
                            .orElseThrow())
                    .as("largest step of %s in an hour", house.code())
                    .isLessThan(2);
            assertThat(mediumC.stream().mapToDouble(c -> c).max().orElseThrow())
                    .as("%s warms on sunny days", house.code())
                    .isGreaterThan(house.mediumSetpointC() + 1.5);
        }
    }

    @Test
    void aDemoStartedAgainContinuesAsIfItHadNeverStopped() {
        Simulator steady = scenario.resumedAt(START);
        Simulator restarted = scenario.resumedAt(START.plus(Duration.ofDays(9)));
        Instant later = START.plus(Duration.ofDays(9)).plusSeconds(20);

        assertThat(restarted.readAllAt(later)).isEqualTo(steady.readAllAt(later));
    }

    @Test
    void liveReadingsHaveMediumAirHumidityAndLightOfEveryHouseInTenthsAtTheFinest() {
        List<DemoReading> readings = scenario.tell(START).simulator().readAllAt(START.plusSeconds(20));

        assertThat(readings).hasSize(48).allSatisfy(reading -> {
            assertThat(reading.at()).isEqualTo(START.plusSeconds(20));
            assertThat(reading.value() * 10).isCloseTo(Math.rint(reading.value() * 10), within(1e-9));
        });
        assertThat(readings.stream().filter(reading -> reading.quantity().equals(DemoReading.MEDIUM)))
                .hasSize(12);
    }

    @Test
    void historyIsHourlyForOverTenWeeksUpToTheStart() {
        List<DemoReading> readings = DemoSeed.toldInNovember().readings();

        assertThat(readings.get(0).at()).isBefore(START.minus(Duration.ofDays(72)));
        assertThat(readings).allMatch(reading -> reading.at().isBefore(START));
        assertThat(readings.get(readings.size() - 1).at()).isAfterOrEqualTo(START.minus(Duration.ofHours(1)));
    }

    /** As seed/demo/setup.json states: silent for 9 hours that ended 290 hours before the start. */
    @Test
    void aSilentProbeLeavesItsHoursEmpty() {
        Instant untilExclusive = START.minus(Duration.ofHours(290));
        List<Instant> heard = DemoSeed.toldInNovember().readings().stream()
                .filter(reading -> reading.house().equals("PELLAN-2")
                        && reading.quantity().equals(DemoReading.MEDIUM)
                        && !reading.at().isBefore(untilExclusive.minus(Duration.ofHours(10)))
                        && reading.at().isBefore(untilExclusive.plus(Duration.ofHours(1))))
                .map(DemoReading::at)
                .toList();

        assertThat(heard).containsExactly(untilExclusive.minus(Duration.ofHours(10)), untilExclusive);
    }

    @Test
    void refusesToGoBack() {
        Simulator simulator = scenario.resumedAt(START);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> simulator.readAllAt(START.minusSeconds(1)))
                .withMessageContaining("2026-11-25T14:59:59Z");
    }

    @Nested
    class Noise {

        @Test
        void staysWithinHalfADegreeAndDoesNotDependOnWhatWasReadBefore() {
            SensorNoise noise = new SensorNoise(7);

            assertThat(IntStream.range(0, 10_000)
                            .mapToDouble(i -> noise.shownC("H", DemoReading.AIR, START.plusSeconds(20L * i), 21.03)))
                    .allMatch(shown -> Math.abs(shown - 21.03) < 0.6);
            assertThat(new SensorNoise(7).shownC("H", DemoReading.AIR, START, 21.03))
                    .isEqualTo(noise.shownC("H", DemoReading.AIR, START, 21.03));
        }
    }

    @Nested
    class Outdoors {

        /** Values read off the public file: 4.0, 3.9 °C at 01:00 and 02:00 on 1 January; 4.3 °C at 23:00 on 31 December. */
        @ParameterizedTest(name = "{0} in {1} has {2} °C: {3}")
        @CsvSource({
            "2026-01-01T06:00:00Z, America/New_York, 4.0,  an hour of the file",
            "2026-01-01T06:30:00Z, America/New_York, 3.95, half-way between two",
            "2026-01-01T07:00:00Z, America/Chicago,  4.0,  by the site's own clock",
            "2026-01-01T05:00:00Z, America/New_York, 4.15, the hour missing in the file lies between 4.3 and 4.0",
            "2029-01-01T04:00:00Z, America/New_York, 4.3,  the last hour of a leap year",
        })
        void followThePublicRecordInTheSitesStandardTime(Instant at, ZoneId zone, double airC, String because)
                throws IOException {
            OutdoorWeather weather = OutdoorWeather.read(DemoSeed.files().text("demo/weather/hourly-normals.csv"));

            assertThat(weather.airC(at, zone)).as(because).isCloseTo(airC, within(1e-9));
        }
    }

    @Nested
    class SunHeight {

        /**
         * Sunrise 7.766425 and sunset 16.23357, solar time, at latitude 50.4 on day 15: chillR's documented run. Sunrise
         * means the upper edge seen through refraction, the centre then being 0.833° below the horizon (from memory).
         */
        @ParameterizedTest(name = "the sun is just below the horizon at {0}")
        @CsvSource({"2026-01-15T07:45:59Z", "2026-01-15T16:14:01Z"})
        void agreesWithPublishedSunriseAndSunset(Instant at) {
            assertThat(new Sun(50.4, 0).sineOfElevation(at)).isCloseTo(Math.sin(Math.toRadians(-0.833)), within(0.002));
        }

        /** By hand: overhead 1098·exp(−0.059) = 1035.1 W·m⁻². */
        @Test
        void givesTheClearSkyOfTheFormulaOverhead() {
            Instant noonAtEquinox = Instant.parse("2026-03-22T12:00:00Z");

            assertThat(new Sun(0, 0).clearSkyWPerM2(noonAtEquinox)).isCloseTo(1035.1, within(1.0));
            assertThat(new Sun(0, 180).clearSkyWPerM2(noonAtEquinox)).isZero();
        }
    }
}
