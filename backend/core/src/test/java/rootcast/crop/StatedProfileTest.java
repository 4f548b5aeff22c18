package rootcast.crop;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A crop that was stated at 7 days and a spread of 0.15; from its batches 6 days and 0.08 were learned and adopted. */
class StatedProfileTest {

    private static final Cardinals WARM = new Cardinals(Cardinals.Form.BETA, 8, 27, 36, 22);
    private static final Cardinals WARMER = new Cardinals(Cardinals.Form.BETA, 8, 29, 36, 22);
    private static final CropProfile STATED = profile(7, WARM, 0.97, 0.15, 8, 0.12, RateFactors.NONE);
    private static final RateFactors TOLD = new RateFactors(Map.of("A", 1.1), Map.of());
    private static final CropProfile LEARNED = profile(6, WARM, 0.9, 0.08, 8, 0.2, TOLD);

    private static CropProfile profile(
            double days,
            Cardinals cardinals,
            double survival,
            double rateSpread,
            int holdDays,
            double cellSpread,
            RateFactors rates) {
        List<StageProfile> stages = new ArrayList<>();
        Stage.GROWING.forEach(stage -> stages.add(new StageProfile(stage, days, cardinals, survival, 150)));
        return new CropProfile(stages, rateSpread, holdDays, cellSpread, rates);
    }

    @Test
    void whatWasLearnedAndLeftAloneIsNobodysStatement() {
        assertThat(StatedProfile.entered(STATED, LEARNED, LEARNED)).isEqualTo(STATED);
    }

    @Test
    void whatSomebodyChangedIsStatedFromThenOn() {
        assertThat(StatedProfile.entered(STATED, LEARNED, profile(6, WARM, 0.9, 0.08, 12, 0.2, TOLD)))
                .isEqualTo(profile(7, WARM, 0.97, 0.15, 12, 0.12, RateFactors.NONE));
        assertThat(StatedProfile.entered(STATED, LEARNED, profile(6, WARM, 0.9, 0.1, 8, 0.3, TOLD)))
                .isEqualTo(profile(7, WARM, 0.97, 0.1, 8, 0.3, RateFactors.NONE));
        assertThat(StatedProfile.entered(STATED, LEARNED, profile(6, WARM, 0.8, 0.08, 8, 0.2, RateFactors.NONE)))
                .isEqualTo(profile(7, WARM, 0.8, 0.15, 8, 0.12, RateFactors.NONE));
    }

    @Test
    void daysAreStatedTogetherWithTheTemperaturesTheyHoldFor() {
        assertThat(StatedProfile.entered(STATED, LEARNED, profile(6, WARMER, 0.9, 0.08, 8, 0.2, TOLD)))
                .isEqualTo(profile(6, WARMER, 0.97, 0.15, 8, 0.12, RateFactors.NONE));
    }
}
