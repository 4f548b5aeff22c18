package rootcast.ledger;

import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;

/** What an entry says happened. Plants and trays are whole numbers. */
public sealed interface What {

    /** Lower-case word that the kind goes by outside. */
    String kind();

    /** Trays were stuck and set down in a house. */
    record Stick(String house, int trays, int plants) implements What {
        @Override
        public String kind() {
            return "stick";
        }
    }

    /** Plants were found dead or thrown out. */
    record Loss(int plants, Cause cause) implements What {
        @Override
        public String kind() {
            return "loss";
        }
    }

    /** Every living plant was counted: from this moment the batch holds exactly so many. */
    record Count(int plants) implements What {
        @Override
        public String kind() {
            return "count";
        }
    }

    /** Some trays were counted and stand for the rest. */
    record SampledCount(Sample sample) implements What {
        @Override
        public String kind() {
            return "count";
        }
    }

    /** The batch was seen to have reached a stage. */
    record StageReached(Stage stage) implements What {
        @Override
        public String kind() {
            return "stage";
        }
    }

    /**
     * Some cells were looked at for a stage.
     *
     * @param stage   CALLUS, ROOT or READY
     * @param cells   cells looked at, each with a living plant
     * @param reached of these, cells that had reached the stage; 0 is "not yet"
     */
    record Look(Stage stage, int cells, int reached) implements What {

        public Look {
            if (stage == Stage.STICK || stage == Stage.SHIP) {
                throw new IllegalArgumentException("nobody looks for " + stage + " but for CALLUS, ROOT or READY");
            }
        }

        @Override
        public String kind() {
            return "look";
        }
    }

    /** The whole batch was carried to another house. */
    record Move(String house) implements What {
        @Override
        public String kind() {
            return "move";
        }
    }

    /**
     * Trays left on a truck.
     *
     * @param plants    plants that went with them; at least the sale count in every tray
     * @param orderLine the promise they fulfil, if they were promised
     */
    record Ship(int trays, int plants, @Nullable OrderLine orderLine) implements What {
        @Override
        public String kind() {
            return "ship";
        }
    }

    /** An earlier entry was a mistake and counts as never made. */
    record Reversal(UUID entry, String reason) implements What {
        @Override
        public String kind() {
            return "reversal";
        }
    }
}
