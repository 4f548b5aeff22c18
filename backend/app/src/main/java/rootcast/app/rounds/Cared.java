package rootcast.app.rounds;

import java.time.Instant;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.crop.CropRecipe;
import rootcast.crop.Phase;
import rootcast.rounds.HouseClimateFit.ResidentBatch;

/** A batch with what it is to have. */
public record Cared(BatchSnapshot snapshot, CropRecipe recipe) {

    String id() {
        return snapshot.batch().id();
    }

    public Phase phaseAt(Instant at) {
        return resident().phaseAt(at);
    }

    ResidentBatch resident() {
        return new ResidentBatch(snapshot.state(), recipe);
    }
}
