package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.crop.CropSeed;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;

class ProfileSeedTest {

    private static final List<String> STAGE_VALUES =
            List.of("daysAtReference", "referenceC", "minC", "optimumC", "maxC", "survivalMean", "survivalWeight");

    /** The fixed form of seed/README.md. */
    private static final Pattern MARKED =
            Pattern.compile("\\w+: (common practice, no source|published)[^;(]*( ?\\([^;]*\\))?");

    private final DemoScenario scenario = DemoSeed.scenario();

    /** Weeks from sticking to liner: breeders' culture sheets (common practice), middle of the stated span. */
    @ParameterizedTest(name = "{0} takes about {1} weeks from sticking to liner")
    @CsvSource({
        "verbena,              3",
        "new-guinea-impatiens, 3.25",
        "bacopa,               3.25",
        "petunia,              4",
        "argyranthemum,        4",
        "salvia,               4",
        "zonal-geranium,       4",
        "poinsettia,           3.5",
        "sweet-potato-vine,    3.75",
        "calibrachoa,          4.75",
        "ivy-geranium,         4.75",
        "lantana,              4.75",
        "osteospermum,         4.75",
        "lavender,             4.75",
        "scaevola,             4.75",
    })
    void daysOfAllStagesAddUpToTheWeeksOfTheCultureSheets(String code, double weeks) {
        assertThat(crop(code).crop().profile().stages().stream()
                        .mapToDouble(StageProfile::daysAtReference)
                        .sum())
                .isCloseTo(weeks * 7, within(0.75));
    }

    @ParameterizedTest(name = "{0} needs {2} mist, so it is {1} days to callus")
    @CsvSource({
        "zonal-geranium, 3, light",
        "ivy-geranium,   3, light",
        "argyranthemum, 10, heavy",
        "osteospermum,  10, heavy",
        "scaevola,      10, heavy",
    })
    void callusComesLaterTheMoreMistACropNeeds(String code, double days, String mist) {
        assertThat(crop(code).crop().profile().of(Stage.STICK).daysAtReference())
                .as(mist)
                .isEqualTo(days);
    }

    @Test
    void everyCropLosesFiveToTenPlantsInAHundredOverAllStages() {
        assertThat(scenario.crops()).allSatisfy(crop -> {
            double survival = crop.crop().profile().stages().stream()
                    .mapToDouble(StageProfile::survivalMean)
                    .reduce(1, (one, other) -> one * other);
            assertThat(survival).as(crop.code()).isBetween(0.90, 0.95);
        });
    }

    @Test
    void linersAreHeldTenToFourteenDaysAndDaysAreStatedForTwentyTwoDegrees() {
        assertThat(scenario.crops()).hasSize(15).allSatisfy(crop -> {
            assertThat(crop.crop().profile().holdDays()).as(crop.code()).isBetween(10, 14);
            assertThat(crop.crop().profile().stages())
                    .allSatisfy(
                            stage -> assertThat(stage.cardinals().referenceC()).isEqualTo(22));
        });
    }

    @Test
    void everyValueOfEveryStageIsMarkedInTheFixedForm() {
        for (CropSeed crop : scenario.crops()) {
            for (Stage stage : Stage.GROWING) {
                List<String> marks = Arrays.asList(crop.source(stage).split("; "));
                assertThat(marks).as("%s %s", crop.code(), stage).allMatch(MARKED.asMatchPredicate());
                assertThat(marks.stream().map(mark -> mark.substring(0, mark.indexOf(':'))))
                        .as("%s %s", crop.code(), stage)
                        .containsExactlyElementsOf(STAGE_VALUES);
            }
            assertThat(crop.profile().note())
                    .as(crop.code())
                    .startsWith("rateSpread: common practice, no source; holdDays: common practice, no source");
        }
    }

    /** Wilkerson, Gates, Zolnier, Kester and Geneve 2005, J. Amer. Soc. Hort. Sci. 130:302-307, abstract. */
    @Test
    void poinsettiaHasThePublishedOptimaOfRootInitiationAndElongation() {
        CropSeed poinsettia = crop("poinsettia");

        assertThat(poinsettia.crop().profile().of(Stage.CALLUS).cardinals().optimumC())
                .isEqualTo(28);
        assertThat(poinsettia.crop().profile().of(Stage.ROOT).cardinals().optimumC())
                .isEqualTo(26);
        assertThat(poinsettia.source(Stage.CALLUS))
                .contains("optimumC: published, Wilkerson et al. 2005")
                .contains("base of 21 °C");
    }

    private CropSeed crop(String code) {
        return scenario.crops().stream()
                .filter(crop -> crop.code().equals(code))
                .findFirst()
                .orElseThrow();
    }
}
