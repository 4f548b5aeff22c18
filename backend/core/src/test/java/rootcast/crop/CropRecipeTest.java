package rootcast.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Values of common practice (CP, no source) are typed here a second time, from the list and not from the code. */
class CropRecipeTest {

    private static final Instant STUCK = Instant.parse("2026-03-02T10:00:00Z");
    private static final CropRecipe MEDIUM_MIST = CommonPractice.recipe(MistNeed.MEDIUM);

    private static Instant day(double days) {
        return STUCK.plus(Duration.ofMinutes(Math.round(days * 24 * 60)));
    }

    @ParameterizedTest(name = "{0} mist: full regime for {1} days (CP)")
    @CsvSource({"LIGHT, 3", "MEDIUM, 4", "HEAVY, 5"})
    void heavyMistCropsKeepTheFullRegimeLonger(MistNeed need, int days) {
        assertThat(CommonPractice.recipe(need).fullMistDays()).isEqualTo(days);
    }

    @ParameterizedTest
    @EnumSource(
            value = Phase.class,
            names = {"STICKING", "CALLUSING", "ROOTING"})
    void untilRootedTheMediumIsNeverBelow20AndTheAirNeverBelow20AtNight(Phase phase) {
        StageRecipe recipe = MEDIUM_MIST.of(phase);

        assertThat(recipe.mediumC()).isEqualTo(new Band(20, 23.3));
        assertThat(recipe.nightAirC().least()).isEqualTo(20);
        assertThat(recipe.dayAirC()).isEqualTo(new Band(20, 26.7));
    }

    /** 1 300 and 1 500 foot-candles of sun: fc × 10.764 lux ÷ 54 lux per µmol (V2) are 259 and 299 µmol. */
    @Test
    void lightIs1300To1500FootCandlesUntilRooted() {
        Band light = MEDIUM_MIST.of(Phase.STICKING).lightUmol();

        assertThat(light.least()).isCloseTo(1_300 * 10.764 / 54, within(2.0));
        assertThat(light.most()).isCloseTo(1_500 * 10.764 / 54, within(2.0));
    }

    @ParameterizedTest(name = "{0}: {1} to {2} ppm nitrogen (CP)")
    @CsvSource({"STICKING, 0, 50", "CALLUSING, 0, 50", "ROOTING, 75, 100", "FILLING, 75, 150"})
    void nitrogenRisesWithTheRoots(Phase phase, double least, double most) {
        assertThat(MEDIUM_MIST.of(phase).nitrogenPpm()).isEqualTo(new Band(least, most));
    }

    @ParameterizedTest(name = "{0}: moisture {1} to {2} of 5 (CP)")
    @CsvSource({"STICKING, 4, 4", "CALLUSING, 4, 4", "ROOTING, 3, 4", "FILLING, 3, 4", "TONING, 2, 3"})
    void moistureIsFourUntilRootsBeginThenThreeAndNeverFive(Phase phase, double least, double most) {
        assertThat(MEDIUM_MIST.of(phase).moistureLevel()).isEqualTo(new Band(least, most));
    }

    @Test
    void mistIsOffAtNightFromCallusOn() {
        assertThat(MEDIUM_MIST.phases().stream().map(StageRecipe::mist))
                .containsExactly(
                        MistRegime.RUNNING, MistRegime.WEANING, MistRegime.NIGHT_OFF, MistRegime.NONE, MistRegime.NONE);
    }

    /** Lantana: medium 22 to 23 °C in breeders' culture sheets (CP). */
    @Test
    void aWarmerCropAsksForAnotherMediumUntilRooted() {
        CropRecipe lantana = MEDIUM_MIST.withMediumUntilRooted(new Band(22, 23));

        assertThat(lantana.of(Phase.CALLUSING).mediumC()).isEqualTo(new Band(22, 23));
        assertThat(lantana.of(Phase.FILLING)).isEqualTo(MEDIUM_MIST.of(Phase.FILLING));
        assertThat(lantana.lowLightMediumLeastC()).isEqualTo(22);
    }

    @Nested
    class Phases {

        private final Map<Stage, Instant> seen =
                Map.of(Stage.CALLUS, day(7), Stage.ROOT, day(15), Stage.READY, day(26));

        @ParameterizedTest(name = "day {0}: {1}")
        @CsvSource({
            "0, STICKING",
            "3.99, STICKING",
            "4, CALLUSING",
            "6.99, CALLUSING",
            "7, ROOTING",
            "14.99, ROOTING",
            "15, FILLING",
            "21.99, FILLING",
            "22, TONING",
            "30, TONING"
        })
        void followWhatWasSeen(double day, Phase phase) {
            assertThat(MEDIUM_MIST.phaseAt(STUCK, seen, day(day))).isEqualTo(phase);
        }

        @Test
        void nothingSeenLeavesTheBatchCallusingHoweverLongItStands() {
            assertThat(MEDIUM_MIST.phaseAt(STUCK, Map.of(), day(60))).isEqualTo(Phase.CALLUSING);
        }

        @Test
        void callusBeforeTheFullRegimeIsOverEndsIt() {
            Map<Stage, Instant> early = Map.of(Stage.CALLUS, day(3));

            assertThat(MEDIUM_MIST.phaseAt(STUCK, early, day(5))).isEqualTo(Phase.ROOTING);
            assertThat(MEDIUM_MIST.startOf(Phase.CALLUSING, STUCK, early)).isEmpty();
        }

        @Test
        void rootsSeenWithoutCallusPassRootingOver() {
            Map<Stage, Instant> rooted = Map.of(Stage.ROOT, day(12));

            assertThat(MEDIUM_MIST.startOf(Phase.ROOTING, STUCK, rooted)).isEmpty();
            assertThat(MEDIUM_MIST.phaseAt(STUCK, rooted, day(13))).isEqualTo(Phase.FILLING);
        }

        @Test
        void aReadyBatchIsToned() {
            Map<Stage, Instant> soon = Map.of(Stage.ROOT, day(12), Stage.READY, day(14));

            assertThat(MEDIUM_MIST.startOf(Phase.TONING, STUCK, soon)).contains(day(14));
        }
    }

    @Nested
    class Refuses {

        @Test
        void phasesThatAreMissingOrInAnotherOrder() {
            List<StageRecipe> backwards = new ArrayList<>(MEDIUM_MIST.phases());
            Collections.reverse(backwards);

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CropRecipe(MistNeed.LIGHT, 3, 7, 5, 21, backwards));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CropRecipe(MistNeed.LIGHT, 3, 7, 5, 21, backwards.subList(0, 4)));
        }

        @Test
        void aBandUpsideDown() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Band(23.3, 20))
                    .withMessageContaining("23.3")
                    .withMessageContaining("20");
        }

        @Test
        void aHumidityOver100() {
            StageRecipe sound = MEDIUM_MIST.of(Phase.STICKING);

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new StageRecipe(
                            sound.phase(),
                            sound.mediumC(),
                            sound.dayAirC(),
                            sound.nightAirC(),
                            new Band(80, 101),
                            sound.deficitKpa(),
                            sound.lightUmol(),
                            sound.moistureLevel(),
                            sound.mist(),
                            sound.mediumEcMsPerCm(),
                            sound.nitrogenPpm()))
                    .withMessage("humidityPercent.most is 101.0; it must lie between 0 and 100");
        }
    }
}
