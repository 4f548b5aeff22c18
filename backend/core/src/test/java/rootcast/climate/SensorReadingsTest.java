package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Against a sorted map, which does the same slowly. */
class SensorReadingsTest {

    private static final Instant START = Instant.parse("2026-03-02T10:00:00Z");

    private static Instant minute(double minutes) {
        return START.plus(Duration.ofMillis(Math.round(minutes * 60_000)));
    }

    @Test
    void holdsWhatCameInInAnyOrderWithTheLastWordOfEachMoment() {
        var readings = new SensorReadings();
        var plain = new TreeMap<Instant, Double>();
        var random = new Random(5);
        for (int i = 0; i < 400; i++) {
            Instant at = minute(random.nextInt(150));
            readings.put(at, i);
            plain.put(at, (double) i);
        }

        assertThat(readings.size()).isEqualTo(plain.size());
        int index = 0;
        for (var each : plain.entrySet()) {
            assertThat(SensorReadings.instant(readings.micros(index))).isEqualTo(each.getKey());
            assertThat(readings.value(index)).isEqualTo(each.getValue());
            assertThat(readings.at(each.getKey())).hasValue(each.getValue());
            index++;
        }
        assertThat(readings.at(minute(0.5))).isEmpty();
        assertThat(readings.at(minute(-1))).isEmpty();
        assertThat(readings.at(minute(151))).isEmpty();
    }

    @Test
    void whatComesInsteadStandsInAndLeavesTheFirstAsItWas() {
        var first = new SensorReadings();
        first.put(minute(1), 1);
        first.put(minute(2), 2);
        var instead = new SensorReadings();
        instead.put(minute(2), 20);
        instead.put(minute(3), 30);

        SensorReadings both = first.with(instead);

        assertThat(both.size()).isEqualTo(3);
        assertThat(both.at(minute(1))).hasValue(1);
        assertThat(both.at(minute(2))).hasValue(20);
        assertThat(both.at(minute(3))).hasValue(30);
        assertThat(first.size()).isEqualTo(2);
        assertThat(first.at(minute(2))).hasValue(2);
    }

    @Test
    void whatWasMeasuredBeforeAnHourIsForgottenAndMoreMayCome() {
        var readings = new SensorReadings();
        for (int i = 0; i < 100; i++) {
            readings.put(minute(3 * i), i);
        }
        long eleven = HourlySeries.hourOf(minute(60));

        readings.forgetBefore(eleven);

        assertThat(readings.size()).isEqualTo(80);
        assertThat(readings.at(minute(57))).isEmpty();
        assertThat(readings.at(minute(60))).hasValue(20);
        readings.forgetBefore(eleven);
        assertThat(readings.size()).isEqualTo(80);
        for (int i = 100; i < 200; i++) {
            readings.put(minute(3 * i), i);
        }
        assertThat(readings.size()).isEqualTo(180);
        assertThat(readings.at(minute(3 * 199))).hasValue(199);
        readings.forgetBefore(eleven + 1_000);
        assertThat(readings.size()).isZero();
        readings.put(minute(0), 7);
        assertThat(readings.at(minute(0))).hasValue(7);
    }

    @Test
    void anHourIsMeasuredFromItsFirstMomentToBeforeItsEnd() {
        long ten = HourlySeries.hourOf(START);
        var readings = new SensorReadings();
        readings.put(START.minusMillis(1), 1);
        readings.put(START.plus(Duration.ofHours(1)), 1);

        assertThat(readings.isMeasured(ten - 1)).isTrue();
        assertThat(readings.isMeasured(ten)).isFalse();
        assertThat(readings.isMeasured(ten + 1)).isTrue();
        assertThat(readings.isMeasured(ten + 2)).isFalse();
    }

    @Test
    void spreadIsFromTheLeastToTheGreatest() {
        var readings = new SensorReadings();
        double[] values = {4, -2, 7, 1, 9};
        for (int i = 0; i < values.length; i++) {
            readings.put(minute(i), values[i]);
        }

        assertThat(readings.spread(0, 3)).isEqualTo(9);
        assertThat(readings.spread(0, 4)).isEqualTo(11);
        assertThat(readings.spread(2, 2)).isZero();
    }
}
