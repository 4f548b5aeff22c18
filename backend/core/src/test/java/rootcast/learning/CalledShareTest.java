package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rootcast.crop.CropProfile;
import rootcast.learning.CellLikelihood.Normal;
import rootcast.learning.StageTimes.LookedAt;
import rootcast.outlook.CellSpread;
import rootcast.outlook.RTable;

/** With how many cells through a stage is called complete, by what was counted and entered of its first batches. */
class CalledShareTest {

    private static final RTable R_MEANS = RTable.of("learning/called-share.csv");
    private static final CropProfile CROP = SimulatedNursery.profile(1, 0.1);
    private static final Normal BEFORE = new Normal(Math.log(7), 0.01);

    private record Case(String name, LookedAt... looks) {
        @Override
        public String toString() {
            return name;
        }
    }

    private static LookedAt look(double gained, int cells, int reached, double toEntry) {
        return new LookedAt(Math.log(gained), 0, cells, reached, toEntry);
    }

    static List<Case> cases() {
        double never = Double.NaN;
        return List.of(
                new Case("nothing"),
                new Case("counted and not entered", look(6, 40, 20, never), look(7, 40, 38, never)),
                new Case("entered at a count of 29 of 40", look(5, 40, 20, 1.4), look(6.4, 40, 29, 0)),
                new Case("entered two days after 12 of 40", look(5.5, 40, 12, 2)),
                new Case("entered a day after 26 of 40, twice looked at", look(5, 40, 5, 2.2), look(6.2, 40, 26, 1)),
                new Case("entered four days after none of 40", look(3, 40, 0, 4)),
                new Case("entered twelve days after 30 of 40", look(6.5, 40, 30, 12)));
    }

    /** R 4.2.2: {@code Rscript called-share.R > called-share.csv}, both beside each other in the resources. */
    @ParameterizedTest
    @MethodSource("cases")
    void theMeanIsThatWhichRIntegrates(Case each) {
        var share = new CalledShare();
        share.add(List.of(each.looks), BEFORE, CellSpread.ofStages(CROP)[0].differing(0.3));

        assertThat(share.quantile()).isCloseTo(R_MEANS.row(each.name)[0], within(0.005));
    }

    @Test
    void aCountAfterTheEntrySaysNothing() {
        var share = new CalledShare();
        share.add(List.of(look(9, 40, 39, -2)), BEFORE, CellSpread.ofStages(CROP)[0]);

        assertThat(share.quantile()).isEqualTo(new CalledShare().quantile());
    }
}
