package rootcast.app.climate;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jboss.logging.Logger;
import rootcast.app.climate.store.Readings;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;

/** Drops raw readings once they have been kept for the time that is set; the hours they make stay for ever. */
@ApplicationScoped
public class PurgeReadings {

    private static final Logger LOG = Logger.getLogger(PurgeReadings.class);

    /** In one transaction: people's entries wait for it, some hundredths of a second. */
    private static final int AT_ONCE = 2_000;

    @Inject
    ClimateConfig config;

    @Inject
    Readings readings;

    @Inject
    HouseWindows windows;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @Scheduled(every = "6h", delayed = "1h", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        purge();
    }

    /** @return readings put away */
    public int purge() {
        Instant recordedBefore = time.instant().minus(Duration.ofDays(config.rawDays()));
        int gone = 0;
        while (readings.isAnyRecordedBefore(recordedBefore)) {
            gone += putAwaySome(recordedBefore);
        }
        if (gone > 0) {
            LOG.infof("%d raw readings put away", gone);
        }
        return gone;
    }

    private int putAwaySome(Instant recordedBefore) {
        int[] gone = new int[1];
        once.write(OnceKey.none(), "old readings", "", 200, () -> {
            windows.forgetAll();
            gone[0] = readings.purge(recordedBefore, AT_ONCE);
            return null;
        });
        return gone[0];
    }
}
