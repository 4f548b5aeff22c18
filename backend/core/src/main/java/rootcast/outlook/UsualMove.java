package rootcast.outlook;

import rootcast.crop.Stage;

/**
 * Where batches of a house usually go on to, as from rooting to toning.
 *
 * @param reached CALLUS or ROOT: they are carried there once they have reached it
 * @param to      code of the next house
 */
public record UsualMove(Stage reached, String to) {

    public UsualMove {
        if (reached != Stage.CALLUS && reached != Stage.ROOT) {
            throw new IllegalArgumentException("batches are carried on once callused or rooted, not at " + reached);
        }
    }
}
