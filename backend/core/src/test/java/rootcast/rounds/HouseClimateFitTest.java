package rootcast.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.rounds.OneHouse.STUCK;
import static rootcast.rounds.OneHouse.day;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.crop.CommonPractice;
import rootcast.crop.MistNeed;
import rootcast.crop.Phase;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeQuantity;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.HouseClimateFit.ResidentBatch;
import rootcast.rounds.OneHouse.Story;

/** On day 16: fresh cuttings need mist, rooted plants must have none (recipes of common practice, CP). */
class HouseClimateFitTest {

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
        HouseClimateFit fit = HouseClimateFit.of(
                Map.of(
                        "H1", List.of(fresh("F1"), fresh("F2"), rooted("R")),
                        "H2", List.of(rooted("R2")),
                        "H3", List.of(fresh("F3")),
                        "H4", List.of()),
                day(16));

        assertThat(fit.clashes()).containsOnlyKeys("H1");
        assertThat(fit.clashes().get("H1")).extracting(RecipeClash::quantity).containsExactly(RecipeQuantity.MIST);
        assertThat(fit.fits()).isEqualTo(Map.of("R", List.of("H2", "H4")));
        assertThat(fit.moves()).containsOnlyKeys("R");
        assertThat(fit.moves().get("R").why())
                .isEqualTo("Clashes with the house's other batches on mist; would suit: H2, H4.");
        assertThat(fit.moves().get("R").since())
                .as("when the fresh ones came in")
                .isEqualTo(day(15));
    }

    @Test
    void whereNoHouseSuitsItSaysSo() {
        HouseClimateFit fit = HouseClimateFit.of(Map.of("H1", List.of(fresh("F1"), fresh("F2"), rooted("R"))), day(16));

        assertThat(fit.fits()).isEqualTo(Map.of("R", List.of()));
        assertThat(fit.moves().get("R").why())
                .isEqualTo("Clashes with the house's other batches on mist; no house of the site suits it now.");
    }

    @Test
    void aClashBeganWhenTheLastOfThemCameInOrWentIntoItsPhase() {
        ResidentBatch carriedIn =
                resident(Story.of("C", day(13), "H2").write(day(15.5), new What.Move(OneHouse.HOUSE)));

        assertThat(HouseClimateFit.of(Map.of("H1", List.of(carriedIn, rooted("R"))), day(16))
                        .moves()
                        .values())
                .isNotEmpty()
                .allSatisfy(advice -> assertThat(advice.since()).isEqualTo(day(15.5)));
        ResidentBatch lately =
                resident(Story.of("L", STUCK).reached(Stage.CALLUS, day(6)).reached(Stage.ROOT, day(15.75)));
        assertThat(HouseClimateFit.of(Map.of("H1", List.of(carriedIn, lately)), day(16))
                        .moves()
                        .values())
                .isNotEmpty()
                .allSatisfy(advice -> assertThat(advice.since()).isEqualTo(day(15.75)));
    }

    @Test
    void batchesThatLiveTogetherAreLeftInPeace() {
        HouseClimateFit fit = HouseClimateFit.of(Map.of("H1", List.of(fresh("F1"), fresh("F2"))), day(16));

        assertThat(fit).isEqualTo(new HouseClimateFit(Map.of(), Map.of(), Map.of()));
        assertThat(rooted("R").phaseAt(day(16))).isEqualTo(Phase.FILLING);
        assertThat(rooted("R").id()).isEqualTo("R");
    }
}
