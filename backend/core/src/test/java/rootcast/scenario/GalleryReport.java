package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

/**
 * Prints the gallery's table of docs/measurements.md; run by name. Ten businesses of 60 batches per truth, with fixed
 * seeds and, in a second table of two businesses, with the seed of the day, which is the build's
 * date unless {@code -Dgallery.day=20261129} says another;
 * {@code -Dgallery.only=Mondays} for the truths whose name holds that.
 */
class GalleryReport {

    private static final int FORECAST = 60;

    /** Taken before the first run. */
    private static final long[] SEEDS =
            LongStream.range(0, 10).map(i -> 20_261_129 + 1_000 * i).toArray();

    @Test
    void printsWhatHoldsOnEveryTruth() {
        print("fixed seeds", SEEDS);
        Long day = Long.getLong("gallery.day");
        if (day != null) {
            print(
                    "seed of the day " + day,
                    LongStream.range(0, 2).map(i -> day * 31 + i).toArray());
        }
    }

    private static void print(String title, long[] seeds) {
        Told.line("\n" + title + "\n\n" + GalleryFigures.HEAD);
        String only = System.getProperty("gallery.only", "");
        for (Truth truth : GalleryOfTruths.all()) {
            if (!truth.name().contains(only)) {
                continue;
            }
            List<GalleryCase> cases = Gallery.of(truth, seeds, FORECAST);
            for (int lead : Gallery.LEADS_DAYS) {
                Told.line(GalleryFigures.of(truth.name(), lead, cases).row());
            }
            assertThat(cases).as(truth.name()).isNotEmpty();
        }
    }
}
