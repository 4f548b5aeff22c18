package rootcast.app.climate;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jboss.logging.Logger;
import rootcast.app.climate.store.Readings;
import rootcast.app.node.NodeDuties;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;

/** Drops raw readings once they have been kept for the time that is set; the hours they make stay for ever. */
@ApplicationScoped
public class PurgeReadings {

    private static final Logger LOG = Logger.getLogger(PurgeReadings.class);

    /** In one transaction: people's entries wait for it, some hundredths of a second. */
    private static final int AT_ONCE = 2_000;

    /** Less than from one round to the next, so that a node that is gone is missed at one round at most. */
    private static final Duration DUTY = Duration.ofHours(5);

    @Inject
    ClimateConfig config;

    @Inject
    Readings readings;

    @Inject
    HouseWindows windows;

    @Inject
    NodeDuties duties;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @Scheduled(every = "6h", delayed = "1h", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        if (duties.take(NodeDuties.PURGE_READINGS, DUTY)) {
            purge();
        }
    }

    /** @return readings purged */
    public int purge() {
        Instant recordedBefore = time.instant().minus(Duration.ofDays(config.rawDays()));
        int gone = 0;
        while (readings.isAnyRecordedBefore(recordedBefore)) {
            gone += purgeSome(recordedBefore);
        }
        if (gone > 0) {
            LOG.infof("%d raw readings purged", gone);
        }
        return gone;
    }

    private int purgeSome(Instant recordedBefore) {
        int[] gone = new int[1];
        once.writeBulk(OnceKey.none(), "old readings", "", 200, () -> {
            windows.forgetAll();
            gone[0] = readings.purge(recordedBefore, AT_ONCE);
            return null;
        });
        return gone[0];
    }
}
