package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.crop.CropSeed;
import rootcast.app.crop.RecipeSeed;
import rootcast.app.crop.SeedFiles;
import rootcast.crop.Band;
import rootcast.crop.MistNeed;
import rootcast.crop.Phase;

/** Mist needs by breeders' culture sheets (CP): low, medium, high; of two the wetter. */
class RecipeSeedTest {

    private final Map<String, RecipeSeed> seeds =
            RecipeSeed.all(SeedFiles.in(Path.of(System.getProperty("repository.root"), "seed")));

    @Test
    void everyCropOfTheSeedHasARecipeWithItsSource() {
        assertThat(seeds.keySet())
                .containsExactlyInAnyOrderElementsOf(
                        DemoSeed.scenario().crops().stream().map(CropSeed::code).toList());
        assertThat(seeds.values()).allSatisfy(seed -> assertThat(seed.source()).contains("common practice no source"));
    }

    @Test
    void mistNeedsAreThoseOfTheCultureSheets() {
        assertThat(seeds.get("ivy-geranium").recipe().mistNeed()).isEqualTo(MistNeed.LIGHT);
        assertThat(seeds.get("zonal-geranium").recipe().mistNeed()).isEqualTo(MistNeed.LIGHT);
        assertThat(seeds.get("calibrachoa").recipe().mistNeed()).isEqualTo(MistNeed.MEDIUM);
        assertThat(seeds.get("lavender").recipe().mistNeed()).isEqualTo(MistNeed.MEDIUM);
        assertThat(seeds.get("poinsettia").recipe().mistNeed()).isEqualTo(MistNeed.HEAVY);
        assertThat(seeds.get("scaevola").recipe().mistNeed()).isEqualTo(MistNeed.HEAVY);
    }

    @Test
    void lantanaHasTheWarmerMediumOfItsSheet() {
        assertThat(seeds.get("lantana").recipe().of(Phase.STICKING).mediumC()).isEqualTo(new Band(22, 23));
        assertThat(seeds.get("verbena").recipe().of(Phase.STICKING).mediumC()).isEqualTo(new Band(20, 23.3));
    }
}
