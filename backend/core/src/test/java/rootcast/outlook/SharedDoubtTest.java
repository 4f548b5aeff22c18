package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CALLUSING;
import static rootcast.outlook.GrowerFixture.ROOTING;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TONING;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;

/** What a batch's date has in common with those of others, in cases where only one thing or two are uncertain. */
class SharedDoubtTest {

    private static SharedDoubt of(double rateSpread, double daysDoubt, int daysMeasured, Map<Stage, Double> reached) {
        CropProfile crop = new CropProfile(
                List.of(
                        new StageProfile(Stage.STICK, 7, CALLUSING, 0.97, 150),
                        new StageProfile(Stage.CALLUS, 9, ROOTING, 0.96, 150),
                        new StageProfile(Stage.ROOT, 10, TONING, 0.98, 150)),
                rateSpread,
                8,
                0.12,
                RateFactors.NONE,
                Variation.USUAL.doubting(daysDoubt).entering(0));
        Map<Stage, java.time.Instant> at = new java.util.EnumMap<>(Stage.class);
        reached.forEach((stage, day) -> at.put(stage, days(day)));
        BatchHistory history = new BatchHistory(
                STUCK,
                at,
                List.of(new Placement("A", STUCK)),
                new Plants(STUCK, 1_050),
                List.of(),
                List.of(),
                null,
                List.of());
        double now = reached.isEmpty() ? 1 : 27;
        HouseCurves houses =
                houses(days(now), "A", constant(22, days(now).minus(Duration.ofDays(daysMeasured)), days(now)));
        return BatchOutlook.of(history, crop, TRAY_105, houses).now().shared();
    }

    /** A house whose days are all alike has no weather. Variances of 0.1² and 0.1² are halves, of 0.1² and 0.2² a fifth and four. */
    @Test
    void ofTheRateTheDaysShareIsTheirVarianceInAll() {
        assertThat(of(0.1, 0.1, 60, Map.of()).ofDays()).isCloseTo(0.5, within(1e-9));
        assertThat(of(0.1, 0.2, 60, Map.of()).ofDays()).isCloseTo(0.8, within(1e-9));
        assertThat(of(0.1, 0, 60, Map.of())).isEqualTo(new SharedDoubt("A", 0, 0));
    }

    @Test
    void whereTheRateIsKnownAllIsTheHousesWeather() {
        SharedDoubt shared = of(0, 0, 2, Map.of());

        assertThat(shared.house()).isEqualTo("A");
        assertThat(shared.ofWeather()).isCloseTo(1, within(1e-9));
        assertThat(shared.ofDays()).isZero();
    }

    @Test
    void whatIsUncertainIsWeatherInPart() {
        SharedDoubt shared = of(0.1, 0.1, 2, Map.of());

        assertThat(shared.ofWeather()).isBetween(0.01, 0.5);
        assertThat(shared.ofWeather() + 2 * shared.ofDays()).isCloseTo(1, within(0.02));
    }

    @Test
    void aBatchThatWasSeenReadySharesNothing() {
        assertThat(of(0.1, 0.1, 60, Map.of(Stage.CALLUS, 7.0, Stage.ROOT, 16.0, Stage.READY, 26.0)))
                .isEqualTo(new SharedDoubt("A", 0, 0));
    }
}
