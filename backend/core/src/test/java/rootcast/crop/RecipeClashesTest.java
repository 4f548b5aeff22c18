package rootcast.crop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rootcast.crop.RecipeClashes.Resident;

class RecipeClashesTest {

    private static final long SEED = 20260304;

    private static Resident resident(String batch, int trays, Phase phase) {
        return new Resident(batch, trays, CommonPractice.recipe(MistNeed.MEDIUM).of(phase));
    }

    private static Resident withMedium(String batch, int trays, double leastC, double mostC) {
        CropRecipe recipe = CommonPractice.recipe(MistNeed.MEDIUM).withMediumUntilRooted(new Band(leastC, mostC));
        return new Resident(batch, trays, recipe.of(Phase.ROOTING));
    }

    @Test
    void neighbouringPhasesLiveTogether() {
        assertThat(RecipeClashes.in(List.of(resident("a", 10, Phase.STICKING), resident("b", 10, Phase.CALLUSING))))
                .isEmpty();
        assertThat(RecipeClashes.in(List.of(resident("a", 10, Phase.ROOTING), resident("b", 10, Phase.FILLING))))
                .isEmpty();
    }

    @Test
    void cuttingsUnderFullMistAndRootedOnesClashOnMistAndTheFewerTraysMove() {
        List<RecipeClash> clashes =
                RecipeClashes.in(List.of(resident("fresh", 40, Phase.STICKING), resident("rooted", 12, Phase.FILLING)));

        assertThat(clashes).extracting(RecipeClash::quantity).containsExactly(RecipeQuantity.MIST);
        assertThat(clashes.get(0).stay()).containsExactly("fresh");
        assertThat(clashes.get(0).move()).containsExactly("rooted");
    }

    @Test
    void tonedAndFreshClashOnMoistureToo() {
        List<RecipeClash> clashes =
                RecipeClashes.in(List.of(resident("fresh", 4, Phase.STICKING), resident("toned", 9, Phase.TONING)));

        assertThat(clashes)
                .extracting(RecipeClash::quantity)
                .containsExactly(RecipeQuantity.MEDIUM_MOISTURE, RecipeQuantity.MIST);
        assertThat(clashes.get(0).move()).containsExactly("fresh");
        assertThat(clashes.get(0).suits()).isEqualTo(new Band(2, 3));
    }

    @Test
    void aBatchFitsWhereItAddsNoClash() {
        Resident fresh = resident("fresh", 4, Phase.STICKING);

        assertThat(RecipeClashes.fits(fresh, List.of())).isTrue();
        assertThat(RecipeClashes.fits(fresh, List.of(resident("b", 1, Phase.CALLUSING))))
                .isTrue();
        assertThat(RecipeClashes.fits(fresh, List.of(resident("c", 1, Phase.TONING))))
                .isFalse();
    }

    /** Brute force: tries every tenth of a degree and keeps the most trays suited by any. */
    @Test
    void noOtherMediumSuitsMoreTrays() {
        Random random = new Random(SEED);
        int clashing = 0;
        for (int run = 0; run < 500; run++) {
            List<Resident> house = new ArrayList<>();
            int batches = 2 + random.nextInt(5);
            for (int batch = 0; batch < batches; batch++) {
                int tenths = 150 + random.nextInt(100);
                house.add(withMedium(
                        "b" + batch, 1 + random.nextInt(30), tenths / 10.0, (tenths + random.nextInt(40)) / 10.0));
            }
            int most = 0;
            for (int tenth = 140; tenth <= 300; tenth++) {
                double medium = tenth / 10.0;
                most = Math.max(
                        most,
                        house.stream()
                                .filter(each -> each.recipe().mediumC().least() <= medium + 1e-9
                                        && medium - 1e-9
                                                <= each.recipe().mediumC().most())
                                .mapToInt(Resident::trays)
                                .sum());
            }
            int all = house.stream().mapToInt(Resident::trays).sum();
            List<RecipeClash> clashes = RecipeClashes.in(house);
            if (clashes.isEmpty()) {
                assertThat(most).as("run %d of seed %d", run, SEED).isEqualTo(all);
            } else {
                clashing++;
                List<String> stay = clashes.get(0).stay();
                assertThat(house.stream()
                                .filter(each -> stay.contains(each.batch()))
                                .mapToInt(Resident::trays)
                                .sum())
                        .as("run %d of seed %d", run, SEED)
                        .isEqualTo(most);
            }
        }
        assertThat(clashing).isGreaterThan(100);
    }
}
