package rootcast.outlook;

import java.time.Instant;
import rootcast.crop.Stage;

/** What speaks against an observation, with both figures. It is never refused for that: whoever saw it is asked once. */
public sealed interface Doubt {

    /** Probability of what was seen, or of something stranger still; 0 where the model has none. */
    double probability();

    /**
     * Fewer or more plants than are likely to be alive.
     *
     * @param seenPlants   alive by the observation
     * @param bookedPlants alive by the books until then
     * @param leastPlants  as many are alive at least, 99 times in a hundred
     * @param mostPlants   as many at most, 99 times in a hundred
     */
    record OfPlants(int seenPlants, int bookedPlants, int leastPlants, int mostPlants, double probability)
            implements Doubt {}

    /**
     * A stage that can hardly be complete yet.
     *
     * @param expected when it should be
     */
    record OfStage(Stage stage, Instant seenAt, DateRange expected, double probability) implements Doubt {}
}
