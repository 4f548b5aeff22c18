package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.List;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.UnmappedTopics;
import rootcast.app.climate.mqtt.MqttIngest;
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

    /** @param unknownTopics topics without a sensor, the one heard last first */
    record IngestWire(
            List<IngestCount.Counted> ways, MqttIngest.State mqtt, List<UnmappedTopics.Heard> unknownTopics) {}

    @GET
    public IngestWire ingest() {
        return new IngestWire(count.all(), mqtt.state(), unknown.all());
    }
}
