package rootcast.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.rounds.OneHouse.STUCK;
import static rootcast.rounds.OneHouse.day;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.crop.Band;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;
import rootcast.crop.Phase;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeQuantity;
import rootcast.crop.Stage;
import rootcast.crop.StageRecipe;
import rootcast.ledger.What;
import rootcast.rounds.HouseClimateFit.Gap;
import rootcast.rounds.HouseClimateFit.Nearest;
import rootcast.rounds.HouseClimateFit.ResidentBatch;
import rootcast.rounds.HouseClimateFit.Ways;
import rootcast.rounds.OneHouse.Story;
import rootcast.saying.Saying;

/** On day 16: fresh cuttings need mist, rooted plants must have none (recipes of common practice, CP). */
class HouseClimateFitTest {

    private static HouseClimateFit of(Map<String, List<ResidentBatch>> houses, Instant now) {
        return HouseClimateFit.of(houses, Map.of(), now);
    }

    private static ResidentBatch resident(Story story) {
        return new ResidentBatch(story.care().state(), CommonPractice.recipe(MistNeed.MEDIUM));
    }

    private static ResidentBatch fresh(String id) {
        return resident(Story.of(id, day(15)));
    }

    private static ResidentBatch rooted(String id) {
        return resident(Story.of(id, STUCK).reached(Stage.CALLUS, day(6)).reached(Stage.ROOT, day(14)));
    }

    @Test
    void batchesThatNoClimateSuitsClashAndTheFewerTraysAreToMoveWhereTheyFit() {
        HouseClimateFit fit = of(
                Map.of(
                        "H1", List.of(fresh("F1"), fresh("F2"), rooted("R")),
                        "H2", List.of(rooted("R2")),
                        "H3", List.of(fresh("F3")),
                        "H4", List.of()),
                day(16));

        assertThat(fit.clashes()).containsOnlyKeys("H1");
        assertThat(fit.clashes().get("H1")).extracting(RecipeClash::quantity).containsExactly(RecipeQuantity.MIST);
        assertThat(fit.ways()).isEqualTo(Map.of("R", new Ways(List.of("H2", "H4"), Map.of(), null)));
        assertThat(fit.moves()).containsOnlyKeys("R");
        assertThat(fit.moves().get("R").why()).isEqualTo(Saying.of(Why.CLASHES, List.of("mist"), List.of("H2", "H4")));
        assertThat(fit.moves().get("R").since())
                .as("when the fresh ones came in")
                .isEqualTo(day(15));
    }

    @Test
    void noMoveIsAdvisedIntoAHouseThatIsClosed() {
        Treatment closing = new Treatment(
                new UUID(2, 1), "H2", null, Treatment.Purpose.CONTROL, "Guard 50", day(15.75), Duration.ofHours(24));
        Map<String, List<ResidentBatch>> houses = Map.of(
                "H1", List.of(fresh("F1"), fresh("F2"), rooted("R")), "H2", List.of(), "H3", List.of(fresh("F3")));

        HouseClimateFit fit = HouseClimateFit.of(houses, Treatment.closedHouses(List.of(closing), day(16)), day(16));

        assertThat(fit.ways()).isEqualTo(Map.of("R", new Ways(List.of(), Map.of("H2", closing), null)));
        assertThat(fit.moves()).as("nothing to be done before it opens").isEmpty();
        HouseClimateFit opened = HouseClimateFit.of(houses, Treatment.closedHouses(List.of(closing), day(17)), day(17));
        assertThat(opened.waysOf("R").fits()).containsExactly("H2");
    }

    @Test
    void whereNoHouseSuitsNothingIsDueAndWhatWouldHaveToGiveWayIsNamed() {
        HouseClimateFit alone = of(Map.of("H1", List.of(fresh("F1"), fresh("F2"), rooted("R"))), day(16));

        assertThat(alone.moves()).isEmpty();
        assertThat(alone.waysOf("R").nearest())
                .as("filling wants no mist, regime 3; sticking wants it to run, regime 0")
                .isEqualTo(new Nearest(
                        "H1", List.of(new Gap(RecipeQuantity.MIST, new Band(2.5, 3.5), new Band(-0.5, 0.5)))));
    }

    @Test
    void ofOtherHousesTheOneWithTheFewestGapsIsNearestAndItsOwnAtATie() {
        CropRecipe warm = with(Phase.FILLING, new Band(25, 27));
        ResidentBatch picky = new ResidentBatch(rooted("P").state(), warm);

        HouseClimateFit fit = of(
                Map.of(
                        "H1",
                        List.of(fresh("F1"), fresh("F2"), picky),
                        "H2",
                        List.of(rooted("R")),
                        "H3",
                        List.of(fresh("G"))),
                day(16));

        assertThat(fit.waysOf("P").nearest())
                .as("in H1 mist and medium would have to give way, in H2 the medium alone")
                .isEqualTo(new Nearest(
                        "H2",
                        List.of(new Gap(RecipeQuantity.MEDIUM_TEMPERATURE, new Band(25, 27), new Band(18, 23.3)))));
        assertThat(of(Map.of("H1", List.of(fresh("F1"), fresh("F2"), rooted("R")), "H3", List.of(fresh("G"))), day(16))
                        .waysOf("R")
                        .nearest()
                        .house())
                .isEqualTo("H1");
    }

    private static CropRecipe with(Phase phase, Band mediumC) {
        CropRecipe usual = CommonPractice.recipe(MistNeed.MEDIUM);
        return new CropRecipe(
                usual.mistNeed(),
                usual.fullMistDays(),
                usual.toneAfterDays(),
                usual.lowLightMol(),
                usual.lowLightMediumLeastC(),
                Arrays.stream(Phase.values())
                        .map(each -> each == phase ? heated(usual.of(each), mediumC) : usual.of(each))
                        .toList());
    }

    private static StageRecipe heated(StageRecipe usual, Band mediumC) {
        return new StageRecipe(
                usual.phase(),
                mediumC,
                usual.dayAirC(),
                usual.nightAirC(),
                usual.humidityPercent(),
                usual.deficitKpa(),
                usual.lightUmol(),
                usual.moistureLevel(),
                usual.mist(),
                usual.mediumEcMsPerCm(),
                usual.nitrogenPpm());
    }

    @Test
    void aClashBeganWhenTheLastOfThemCameInOrWentIntoItsPhase() {
        ResidentBatch carriedIn =
                resident(Story.of("C", day(13), "H2").write(day(15.5), new What.Move(OneHouse.HOUSE)));

        assertThat(of(Map.of("H1", List.of(carriedIn, rooted("R")), "H4", List.of()), day(16))
                        .moves()
                        .values())
                .isNotEmpty()
                .allSatisfy(advice -> assertThat(advice.since()).isEqualTo(day(15.5)));
        ResidentBatch lately =
                resident(Story.of("L", STUCK).reached(Stage.CALLUS, day(6)).reached(Stage.ROOT, day(15.75)));
        assertThat(of(Map.of("H1", List.of(carriedIn, lately), "H4", List.of()), day(16))
                        .moves()
                        .values())
                .isNotEmpty()
                .allSatisfy(advice -> assertThat(advice.since()).isEqualTo(day(15.75)));
    }

    @Test
    void batchesThatLiveTogetherAreLeftInPeace() {
        HouseClimateFit fit = of(Map.of("H1", List.of(fresh("F1"), fresh("F2"))), day(16));

        assertThat(fit).isEqualTo(new HouseClimateFit(Map.of(), Map.of(), Map.of()));
        assertThat(rooted("R").phaseAt(day(16))).isEqualTo(Phase.FILLING);
        assertThat(rooted("R").id()).isEqualTo("R");
    }
}
