package rootcast.ledger;

import java.time.Instant;
import java.util.UUID;
import rootcast.crop.Stage;

/** Why an entry may not be written, with the numbers that decided it. Nothing is written when one is given. */
public sealed interface Refusal {

    /** More plants were to leave than are alive at that moment. */
    record MoreThanAlive(int askedPlants, int alivePlants) implements Refusal {}

    /** A count found more plants than were ever stuck and not shipped. */
    record MoreThanStuck(int countedPlants, int mostPlants) implements Refusal {}

    /** More trays were to ship than can be filled to the sale count. */
    record MoreThanSaleable(int askedTrays, int saleableTrays, int alivePlants, int saleCount) implements Refusal {}

    /** The plants named do not fit the trays named. */
    record PlantsDoNotFitTrays(int plants, int trays, int leastPlants, int mostPlants) implements Refusal {}

    /** The sample names more trays or cells than the batch has on the bench. */
    record SampleBeyondBatch(Sample sample, int benchTrays, int cellsPerTray) implements Refusal {}

    /** The batch had already reached that stage or a later one. */
    record StageGoesBack(Stage asked, Stage current) implements Refusal {}

    /** Trays may leave once the batch is rooted. */
    record ShipBeforeRooted(Stage current) implements Refusal {}

    /** Nothing can happen to a batch before it is stuck. */
    record BeforeSticking(Instant happenedAt, Instant stuckAt) implements Refusal {}

    record InTheFuture(Instant happenedAt, Instant now) implements Refusal {}

    record AlreadyInHouse(String house) implements Refusal {}

    /** An amount outside what the field may hold. */
    record OutOfRange(String field, long asked, long least, long most) implements Refusal {}

    /** The entry is possible by itself, but a later one could then not have happened. */
    record ContradictsLater(UUID laterEntry, String laterKind, Instant laterHappenedAt, Refusal because)
            implements Refusal {}

    record NoSuchEntry(UUID entry) implements Refusal {}

    record AlreadyReversed(UUID entry, UUID by) implements Refusal {}

    /** Reversals are not reversed: after one the entry is made again. */
    record CannotBeReversed(UUID entry, String kind) implements Refusal {}
}
