package rootcast.app.climate;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.List;
import org.jboss.logging.Logger;

/** Writes down every few seconds what this node has counted, and once more before it ends. */
@ApplicationScoped
public class FlushIngest {

    private static final Logger LOG = Logger.getLogger(FlushIngest.class);

    @Inject
    IngestCount count;

    @Inject
    UnmappedTopics topics;

    @Scheduled(
            every = "${rootcast.climate.flush-every:5s}",
            delayed = "5s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        flush();
    }

    /** After the listeners have ended. */
    void atTheEnd(@Observes @Priority(3_000) ShutdownEvent event) {
        flush();
    }

    public void flush() {
        for (Runnable each : List.<Runnable>of(count::flush, topics::flush)) {
            try {
                each.run();
            } catch (RuntimeException failed) {
                LOG.warnf("counts could not be written, trying again: %s", failed);
            }
        }
    }
}
