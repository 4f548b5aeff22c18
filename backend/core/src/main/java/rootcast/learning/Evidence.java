package rootcast.learning;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;
import rootcast.saying.Saying;

/**
 * What a learned profile rests on, and how it differs from the profile before.
 *
 * @param roundsDays how far apart rounds were taken to be where no look tells
 * @param text       the same in sentences
 */
public record Evidence(
        Instant asOf,
        int finishedBatches,
        int runningBatches,
        List<OfStage> stages,
        double rateSpreadBefore,
        double rateSpreadLearned,
        double cellSpreadBefore,
        double cellSpreadLearned,
        double roundsDays,
        List<OfCardinals> cardinals,
        List<OfVariety> varieties,
        List<OfSite> sites,
        List<String> text) {

    /**
     * @param daysBefore      days at reference in the profile before
     * @param daysLow         the days lie between low and high with probability 0.8
     * @param observations    batches in which the stage was seen from begin to end
     * @param survivalBatches batches whose plants were counted through the stage
     */
    public record OfStage(
            Stage stage,
            double daysBefore,
            double daysLearned,
            double daysLow,
            double daysHigh,
            int observations,
            double survivalBefore,
            double survivalLearned,
            int survivalBatches) {}

    /**
     * @param identified whether the batches tell any of the stage's cardinal temperatures
     * @param reason     why, or why not, for machines
     * @param why        what a screen says of that; null in what was learned before such was kept
     * @param minC       learned; null if it stays what it was
     * @param optimumC   learned; null if it stays what it was
     * @param maxC       learned; null if it stays what it was
     */
    public record OfCardinals(
            Stage stage,
            boolean identified,
            String reason,
            @Nullable Saying why,
            @Nullable Double minC,
            @Nullable Double optimumC,
            @Nullable Double maxC) {}

    /** @param rate factor on the crop's rate, over 1 faster */
    public record OfVariety(String variety, int batches, double rate) {}

    /** @param rate factor on the crop's rate, over 1 faster */
    public record OfSite(String site, int batches, double rate) {}

    public Evidence {
        stages = List.copyOf(stages);
        cardinals = List.copyOf(cardinals);
        varieties = List.copyOf(varieties);
        sites = List.copyOf(sites);
        text = List.copyOf(text);
    }
}
