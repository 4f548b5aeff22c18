package rootcast.app.crop;

import java.util.List;
import rootcast.crop.Cardinals;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;

/** A crop profile as seed/profiles writes it, which is how it is posted: with the source of every value. */
public record CropSeed(String code, String name, Profile profile) {

    public record Profile(List<StageSeed> stages, double rateSpread, int holdDays, String note) {}

    /** @param source marks of all values of the stage, in the form of seed/README.md */
    public record StageSeed(
            Stage stage,
            double daysAtReference,
            double referenceC,
            double minC,
            double optimumC,
            double maxC,
            double survivalMean,
            double survivalWeight,
            Cardinals.Form form,
            String source) {

        StageProfile stageProfile() {
            return new StageProfile(
                    stage,
                    daysAtReference,
                    new Cardinals(form, minC, optimumC, maxC, referenceC),
                    survivalMean,
                    survivalWeight);
        }
    }

    /** The crop without its sources, as the arithmetic takes it. */
    public Crop crop() {
        List<StageProfile> stages =
                profile.stages().stream().map(StageSeed::stageProfile).toList();
        return new Crop(code, name, new CropProfile(stages, profile.rateSpread(), profile.holdDays()));
    }

    /** What a stage's values rest on. */
    public String source(Stage stage) {
        return profile.stages().get(Stage.GROWING.indexOf(stage)).source();
    }
}
