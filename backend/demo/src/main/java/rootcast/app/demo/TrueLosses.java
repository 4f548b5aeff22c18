package rootcast.app.demo;

import java.util.EnumMap;
import java.util.Map;
import java.util.SplittableRandom;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;

/**
 * How many plants of a batch really die in each stage: a survival drawn around the crop's mean, less what the batch's
 * story takes, then one draw for every plant.
 *
 * @param dead plants that die in the stage
 */
record TrueLosses(Map<Stage, Integer> dead) {

    private static final double LOWEST_SURVIVAL = 0.5;
    private static final double HIGHEST_SURVIVAL = 0.998;

    static TrueLosses draw(CropProfile profile, Story story, int stuckPlants, SplittableRandom random) {
        Map<Stage, Integer> dead = new EnumMap<>(Stage.class);
        int alive = stuckPlants;
        for (StageProfile stage : profile.stages()) {
            double mean = stage.survivalMean();
            double deviation = Math.sqrt(mean * (1 - mean) / (stage.survivalWeight() + 1));
            double drawn = mean + deviation * random.nextGaussian() - story.extraLossShare(stage.stage());
            double survival = Math.min(HIGHEST_SURVIVAL, Math.max(LOWEST_SURVIVAL, drawn));
            int died = 0;
            for (int plant = 0; plant < alive; plant++) {
                if (random.nextDouble() >= survival) {
                    died++;
                }
            }
            dead.put(stage.stage(), died);
            alive -= died;
        }
        return new TrueLosses(dead);
    }

    int in(Stage stage) {
        return dead.get(stage);
    }
}
