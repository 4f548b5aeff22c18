package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.List;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.UnmappedTopics;
import rootcast.app.climate.mqtt.MqttIngest;
import rootcast.app.climate.store.IngestTables;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;

/** What came in, what became of it, and how it stands with the broker. */
@Path("/api/ingest")
@Needs(Right.READ)
public class IngestResource {

    @Inject
    IngestCount count;

    @Inject
    MqttIngest mqtt;

    @Inject
    UnmappedTopics unknown;

    @Inject
    IngestTables tables;

    private static final int SHOWN = 20;

    /**
     * @param count of all messages that were set apart and are still kept
     * @param last  the newest of them first
     */
    record RefusedWire(long count, List<IngestTables.RefusedMessage> last) {}

    /**
     * @param unknownTopics topics without a sensor, the one seen last first
     * @param refused       messages that could not be stored although the database works
     */
    record IngestWire(
            List<IngestCount.Counted> ways,
            MqttIngest.State mqtt,
            List<UnmappedTopics.Seen> unknownTopics,
            RefusedWire refused) {}

    @GET
    public IngestWire ingest() {
        return new IngestWire(
                count.all(),
                mqtt.state(),
                unknown.all(),
                new RefusedWire(tables.refusedMessages(), tables.lastRefused(SHOWN)));
    }
}
