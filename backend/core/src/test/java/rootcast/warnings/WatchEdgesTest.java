package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rootcast.crop.Band;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;
import rootcast.crop.Phase;
import rootcast.crop.Stage;
import rootcast.crop.StageRecipe;
import rootcast.ledger.What;
import rootcast.rounds.OneHouse.Story;
import rootcast.rounds.Task;

/** Where a rule begins and ends; limits are those of common practice (CP, no source), light sums by hand. */
class WatchEdgesTest {

    private static final int DAYS = 12;

    private static ScriptedHouse calm() {
        return ScriptedHouse.calm(7, 82, 70, 3.8, DAYS);
    }

    private static Story cuttings() {
        return Story.of("A", at(0, 8));
    }

    private static Story rooted() {
        return Story.of("F", at(-20, 8)).reached(Stage.CALLUS, at(-12, 8)).reached(Stage.ROOT, at(-3, 8));
    }

    private static Instant at(int day, int hour) {
        return ScriptedHouse.at(day, hour);
    }

    private static Instant at(int day, int hour, int minute) {
        return ScriptedHouse.at(day, hour).plus(Duration.ofMinutes(minute));
    }

    private static List<Warning> of(WarningKind kind, List<Warning> warnings) {
        return warnings.stream().filter(warning -> warning.kind() == kind).toList();
    }

    /** Below 5 mol in the day that ends with the hour 20.5 °C is too cold for cuttings, which is fine else. */
    @Nested
    class LowLight {

        /** 1 400 µmol for the hour from 6:00 are 5.04 mol, and there is no other light for days. */
        private ScriptedHouse oneBrightHour(int coldFrom) {
            return calm().with(cuttings())
                    .fault(Measured.LIGHT_UMOL, 2, 0, 24 * 6, 0)
                    .fault(Measured.LIGHT_UMOL, 5, 6, 1, 1_400)
                    .fault(Measured.MEDIUM_C, 5, coldFrom, 3, 20.5);
        }

        @Test
        void isOverWithTheHourThatMakesTheDayBrightEnough() {
            assertThat(of(WarningKind.MEDIUM_COLD, oneBrightHour(3).warningsUntil(7, 0)))
                    .hasSize(1);
            assertThat(of(WarningKind.MEDIUM_COLD, oneBrightHour(4).warningsUntil(7, 0)))
                    .as("the third cold hour is the bright one")
                    .isEmpty();
        }

        @Test
        void beginsAgainADayLater() {
            assertThat(of(WarningKind.MEDIUM_COLD, oneBrightHour(24 + 5).warningsUntil(7, 0)))
                    .as("the first cold hour still has the bright one in its day")
                    .isEmpty();
            assertThat(of(WarningKind.MEDIUM_COLD, oneBrightHour(24 + 6).warningsUntil(7, 0)))
                    .hasSize(1);
        }

        /** 1 000 µmol for an hour are 3.6 mol exactly. */
        @Test
        void isBelowItsLimitAndNotAtIt() {
            assertThat(of(WarningKind.MEDIUM_COLD, lowBelow(3.6).warningsUntil(7, 0)))
                    .isEmpty();
            assertThat(of(WarningKind.MEDIUM_COLD, lowBelow(3.7).warningsUntil(7, 0)))
                    .hasSize(1);
        }

        private ScriptedHouse lowBelow(double mol) {
            CropRecipe usual = CommonPractice.recipe(MistNeed.MEDIUM);
            return calm().with(
                            cuttings(),
                            new CropRecipe(
                                    MistNeed.MEDIUM,
                                    usual.fullMistDays(),
                                    usual.toneAfterDays(),
                                    mol,
                                    usual.lowLightMediumLeastC(),
                                    usual.phases()))
                    .fault(Measured.LIGHT_UMOL, 2, 0, 24 * 6, 0)
                    .fault(Measured.LIGHT_UMOL, 5, 6, 1, 1_000)
                    .fault(Measured.MEDIUM_C, 5, 8, 3, 20.5);
        }

        @Test
        void mattersToPlantsWithoutRootsAndOnlyTheyAreNamed() {
            ScriptedHouse both = calm().with(cuttings())
                    .with(rooted())
                    .fault(Measured.LIGHT_UMOL, 2, 0, 24 * 6, 0)
                    .fault(Measured.MEDIUM_C, 5, 8, 3, 20.5);
            ScriptedHouse rootedAlone = calm().with(rooted())
                    .fault(Measured.LIGHT_UMOL, 2, 0, 24 * 6, 0)
                    .fault(Measured.MEDIUM_C, 3, 8, 3, 20.5);

            assertThat(of(WarningKind.MEDIUM_COLD, both.warningsUntil(5, 12)))
                    .singleElement()
                    .satisfies(warning -> assertThat(warning.batches()).containsExactly("A"));
            assertThat(of(WarningKind.MEDIUM_COLD, rootedAlone.warningsUntil(3, 12)))
                    .isEmpty();
        }
    }

    @Nested
    class Moisture {

        @Test
        void aLookHoldsForADayAndNotAnHourMore() {
            ScriptedHouse byHand =
                    calm().with(cuttings()).without(Measured.MOISTURE_LEVEL).did(Task.MOISTURE_CHECK, "A", 5, 9, 2);
            Warning dry = of(WarningKind.MEDIUM_DRY, byHand.warningsUntil(6, 0)).get(0);

            assertThat(byHand.seen(dry, 5, 0, 48))
                    .hasSize(24)
                    .extracting(Watch.Seen::at)
                    .contains(at(5, 9), at(6, 8));
        }

        /** Nobody has looked since: that the level is not known any more does not mean it is as it should be. */
        @Test
        void whatALookRaisedLastsUntilTheNext() {
            ScriptedHouse byHand =
                    calm().with(cuttings()).without(Measured.MOISTURE_LEVEL).did(Task.MOISTURE_CHECK, "A", 5, 9, 2);

            assertThat(of(WarningKind.MEDIUM_DRY, byHand.warningsUntil(7, 12)))
                    .singleElement()
                    .satisfies(warning -> assertThat(warning.until()).isNull());
        }

        @Test
        void ofAProbeIsFineOnlyAfterItsHours() {
            ScriptedHouse probe = calm().with(cuttings())
                    .fault(Measured.MOISTURE_LEVEL, 5, 4, 6, 3.2)
                    .fault(Measured.MOISTURE_LEVEL, 5, 10, 1, 4)
                    .silent(Measured.MOISTURE_LEVEL, 5, 11, 20);

            assertThat(of(WarningKind.MEDIUM_DRY, probe.warningsUntil(5, 11)))
                    .singleElement()
                    .satisfies(warning -> assertThat(warning.until()).isNull());
        }

        @Test
        void saturationIsToldOfWhileRootsFormAndFillTheCell() {
            ScriptedHouse wet = calm().with(cuttings()).fault(Measured.MOISTURE_LEVEL, 2, 6, 24, 4.8);

            assertThat(of(WarningKind.MEDIUM_SATURATED, wet.warningsUntil(3, 6)))
                    .isEmpty();
            assertThat(of(WarningKind.OVER_MISTING, wet.warningsUntil(3, 6))).hasSize(1);
        }

        @Test
        void ofAnEmptyHouseIsNobodysTroubleAndTheNextBatchsItsOwn() {
            ScriptedHouse dry = calm().with(cuttings().write(at(5, 10), new What.Move("H2")))
                    .with(Story.of("B", at(6, 10)))
                    .fault(Measured.MOISTURE_LEVEL, 5, 0, 48, 3.2);

            assertThat(of(WarningKind.MEDIUM_DRY, dry.warningsUntil(7, 0)))
                    .extracting(Warning::batches)
                    .containsExactly(List.of("A"), List.of("B"));
        }
    }

    /** FAO-56: at no humidity there is no vapour to be told of; the humidity itself is 80 % too low. */
    @Test
    void aHumidityOfNoneIsTooDryByItself() {
        ScriptedHouse none = calm().with(cuttings()).fault(Measured.HUMIDITY_PERCENT, 2, 8, 3, 0);

        assertThat(of(WarningKind.DRY_DOWN, none.warningsUntil(2, 11)))
                .singleElement()
                .satisfies(warning -> {
                    assertThat(warning.unit()).isEqualTo("%");
                    assertThat(warning.worst()).isZero();
                });
    }

    @Test
    void saltsMeasuredInAnotherHouseSayNothingOfThisOne() {
        ScriptedHouse leached = calm().with(rooted()).measured(0.4, at(1, 8)).measured("H2", 1.1, at(1, 20, 5));

        assertThat(of(WarningKind.LEACHED, leached.warningsAt(at(1, 20, 10))))
                .singleElement()
                .satisfies(warning -> assertThat(warning.until()).isNull());
    }

    @Test
    void noFeedIsMissedWhereTheRecipeAsksForNone() {
        CropRecipe usual = CommonPractice.recipe(MistNeed.MEDIUM);
        CropRecipe unfed = new CropRecipe(
                MistNeed.MEDIUM,
                usual.fullMistDays(),
                usual.toneAfterDays(),
                usual.lowLightMol(),
                usual.lowLightMediumLeastC(),
                usual.phases().stream()
                        .map(phase -> phase.phase() == Phase.FILLING ? withoutNitrogen(phase) : phase)
                        .toList());

        assertThat(of(WarningKind.NO_FEED, calm().with(rooted()).warningsUntil(1, 0)))
                .hasSize(1);
        assertThat(of(WarningKind.NO_FEED, calm().with(rooted(), unfed).warningsUntil(1, 0)))
                .isEmpty();
    }

    private static StageRecipe withoutNitrogen(StageRecipe recipe) {
        return new StageRecipe(
                recipe.phase(),
                recipe.mediumC(),
                recipe.dayAirC(),
                recipe.nightAirC(),
                recipe.humidityPercent(),
                recipe.deficitKpa(),
                recipe.lightUmol(),
                recipe.moistureLevel(),
                recipe.mist(),
                recipe.mediumEcMsPerCm(),
                new Band(0, 50));
    }

    @Test
    void aProbeThatFellSilentTwiceWasMissedTheFirstTimeToo() {
        ScriptedHouse twice = calm().with(cuttings())
                .without(Measured.MEDIUM_C)
                .fault(Measured.MEDIUM_C, 1, 0, 6, 22)
                .fault(Measured.MEDIUM_C, 1, 12, 12, 22);

        assertThat(of(WarningKind.NO_READINGS, twice.warningsUntil(3, 0)))
                .extracting(Warning::since)
                .containsExactly(at(1, 6), at(2, 0));
    }

    @Test
    void aLevelThatWasSeenAndIsNotAnyMoreIsNoSilentProbe() {
        ScriptedHouse house = calm().with(cuttings()).silent(Measured.MOISTURE_LEVEL, 4, 0, 48);

        assertThat(of(WarningKind.NO_READINGS, house.warningsUntil(6, 0))).isEmpty();
    }

    /** Callused on day 5 at 8:00: due two days later, told of at 9:00. */
    @Test
    void whatWasDoneWithinItsHourWasDoneInTime() {
        ScriptedHouse inTime = calm().with(cuttings().reached(Stage.CALLUS, at(5, 8)))
                .did(Task.NIGHT_MIST_OFF, "A", at(7, 8, 30), null);
        ScriptedHouse late = calm().with(cuttings().reached(Stage.CALLUS, at(5, 8)))
                .did(Task.NIGHT_MIST_OFF, "A", at(7, 9, 30), null);

        assertThat(of(WarningKind.MIST_NOT_WEANED, inTime.warningsUntil(8, 0))).isEmpty();
        assertThat(of(WarningKind.MIST_NOT_WEANED, late.warningsUntil(8, 0))).hasSize(1);
    }

    @Test
    void whatElseWasDoneInThatHourDoesNotEndIt() {
        ScriptedHouse house = calm().with(cuttings().reached(Stage.CALLUS, at(5, 8)))
                .did(Task.MOISTURE_CHECK, "A", at(8, 10, 5), 4)
                .did(Task.NIGHT_MIST_OFF, "A", at(8, 10, 20), null);

        assertThat(of(WarningKind.MIST_NOT_WEANED, house.warningsUntil(9, 0)))
                .extracting(Warning::until)
                .containsExactly(at(8, 10, 20));
    }

    /** B is burnt and carried out at 14:10; C comes at 16:00 and was never in that light. */
    @Test
    void whoComesAfterwardsDoesNotMakeAWarningLast() {
        ScriptedHouse house = calm().with(Story.of("B", at(0, 8)).write(at(4, 14, 10), new What.Move("H2")))
                .with(Story.of("C", at(4, 16)))
                .fault(Measured.LIGHT_UMOL, 4, 11, 3, 480);

        assertThat(of(WarningKind.LIGHT_HIGH, house.warningsUntil(4, 18)))
                .extracting(Warning::until)
                .containsExactly(at(4, 15));
    }
}
