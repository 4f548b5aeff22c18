package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class HourlySeriesTest {

    private static final Instant TEN = Instant.parse("2026-03-01T10:00:00Z");
    private static final long HOUR = HourlySeries.hourOf(TEN);

    private record Reading(Instant at, double celsius) {}

    @Test
    void anHourIsTheMeanOfItsReadings() {
        var series = new HourlySeries();
        series.add(TEN, 20);
        series.add(TEN.plusSeconds(3_599), 23);
        series.add(TEN.plusSeconds(3_600), 30);

        assertThat(series.meanC(HOUR)).isCloseTo(21.5, within(1e-12));
        assertThat(series.meanC(HOUR + 1)).isCloseTo(30, within(1e-12));
        assertThat(series.readings(HOUR)).isEqualTo(2);
        assertThat(series.readings()).isEqualTo(3);
    }

    @Test
    void anHourWithoutReadingsIsMissingNotZero() {
        var series = new HourlySeries();
        assertThat(series.isMeasured(HOUR)).isFalse();
        series.add(TEN, 20);

        assertThat(series.meanC(HOUR - 1)).isNaN();
        assertThat(series.meanC(HOUR + 1)).isNaN();
        assertThat(series.isMeasured(HOUR + 1)).isFalse();
    }

    @Test
    void anyOrderOfArrivalLeavesTheSameSeriesToTheLastBit() {
        var random = new Random(7);
        for (int run = 0; run < 50; run++) {
            List<Reading> readings = new ArrayList<>();
            for (int i = 0; i < 400; i++) {
                readings.add(
                        new Reading(TEN.plusSeconds(random.nextInt(-400_000, 400_000)), random.nextDouble(-10, 60)));
            }
            var inOrder = seriesOf(readings);
            Collections.shuffle(readings, random);
            var shuffled = seriesOf(readings);

            for (long hour = HOUR - 120; hour <= HOUR + 120; hour++) {
                assertThat(Double.doubleToLongBits(shuffled.meanC(hour)))
                        .as("seed 7, run %d, hour %d", run, hour)
                        .isEqualTo(Double.doubleToLongBits(inOrder.meanC(hour)));
            }
        }
    }

    @Test
    void storedHoursComeBackAndReplaceWhatWasThere() {
        var series = new HourlySeries();
        series.add(TEN, 11);
        series.put(HOUR, 3 * HourlySeries.microC(21.5), 3);
        series.put(HOUR - 5_000, HourlySeries.microC(-3.25), 1);

        assertThat(series.meanC(HOUR)).isCloseTo(21.5, within(1e-12));
        assertThat(series.meanC(HOUR - 5_000)).isCloseTo(-3.25, within(1e-12));
        series.put(HOUR, 0, 0);
        assertThat(series.isMeasured(HOUR)).isFalse();
    }

    @Test
    void refusesWhatCannotBeStored() {
        var series = new HourlySeries();
        series.add(TEN, 20);

        assertThatIllegalArgumentException().isThrownBy(() -> series.add(TEN, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> series.put(HOUR, 5, 0));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> series.add(Instant.EPOCH, 20))
                .withMessageContaining("1970");
    }

    private static HourlySeries seriesOf(List<Reading> readings) {
        var series = new HourlySeries();
        readings.forEach(reading -> series.add(reading.at(), reading.celsius()));
        return series;
    }

    @Test
    void aSnapshotStaysAsItWasAndRefusesToBeWrittenTo() {
        var series = new HourlySeries();
        series.add(TEN, 20);

        HourlySeries snapshot = series.snapshot();
        series.add(TEN, 30);
        series.put(HOUR - 1_000, HourlySeries.microC(5), 1);
        series.put(HOUR + 1, HourlySeries.microC(5), 1);

        assertThat(snapshot.meanC(HOUR)).isCloseTo(20, within(1e-12));
        assertThat(snapshot.readings()).isEqualTo(1);
        assertThat(series.meanC(HOUR)).isCloseTo(25, within(1e-12));
        assertThat(series.readings()).isEqualTo(4);
        assertThatIllegalStateException().isThrownBy(() -> snapshot.add(TEN, 1));
        assertThatIllegalStateException().isThrownBy(() -> snapshot.put(HOUR, 0, 0));
    }

    @Test
    void aSnapshotOfGrownHoursSharesNoneThatAreWrittenLater() {
        var series = new HourlySeries();
        series.add(TEN, 20);
        HourlySeries before = series.snapshot();
        series.put(HOUR - 1_000, HourlySeries.microC(5), 1);
        HourlySeries after = series.snapshot();

        series.add(TEN, 30);
        series.add(HourlySeries.startOf(HOUR - 1_000), 15);

        assertThat(before.readings(HOUR)).isEqualTo(1);
        assertThat(after.readings(HOUR)).isEqualTo(1);
        assertThat(after.meanC(HOUR - 1_000)).isCloseTo(5, within(1e-12));
        assertThat(series.meanC(HOUR - 1_000)).isCloseTo(10, within(1e-12));
    }

    @Test
    void aCopyAndItsOriginalAreWrittenToByThemselves() {
        var series = new HourlySeries();
        series.add(TEN, 20);
        HourlySeries copy = series.copy();
        HourlySeries ofSnapshot = series.snapshot().copy();

        copy.add(TEN, 30);
        series.add(TEN, 40);
        ofSnapshot.add(TEN, 10);

        assertThat(copy.meanC(HOUR)).isCloseTo(25, within(1e-12));
        assertThat(series.meanC(HOUR)).isCloseTo(30, within(1e-12));
        assertThat(ofSnapshot.meanC(HOUR)).isCloseTo(15, within(1e-12));
    }

    @Test
    void aReadingIsFiniteAndAMillionAtMost() {
        assertThat(HourlySeries.microC(1e6)).isEqualTo(1_000_000_000_000L);
        assertThat(HourlySeries.microC(-1e6)).isEqualTo(-1_000_000_000_000L);
        for (double none : new double[] {1e6 + 1, -1e6 - 1, Double.POSITIVE_INFINITY}) {
            assertThatIllegalArgumentException().isThrownBy(() -> HourlySeries.microC(none));
        }
        assertThatIllegalArgumentException().isThrownBy(() -> new HourlySeries().put(HOUR, 5, -1));
    }

    @Test
    void readingsMayBe49YearsApart() {
        var series = new HourlySeries();
        series.add(Instant.parse("1971-01-01T00:00:00Z"), 10);
        series.add(Instant.parse("2020-01-01T00:00:00Z"), 20);

        assertThat(series.readings()).isEqualTo(2);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> series.add(Instant.parse("2022-01-01T00:00:00Z"), 20))
                .withMessageContaining("2022");
    }
}
