package rootcast.app.demo;

import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.ledger.What;

/**
 * An entry that people of the demo made for one of its batches; never a {@code Stick}, which comes with the batch.
 *
 * @param id    made from the demo's own names, the same at every load: good as an idempotency key. A reversal names the
 *              id of the entry it reverses, a shipment the {@link DemoOrder#id} of its order
 * @param batch key of the batch
 */
public record DemoEntry(
        UUID id,
        String batch,
        Instant happenedAt,
        Instant recordedAt,
        String recordedBy,
        What what,
        @Nullable String note) {}
