package rootcast.app.warnings;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import org.jboss.logging.Logger;
import rootcast.app.warnings.store.WarningStore;

/**
 * Sends what is owed. A warning is marked as told only after the other side has taken it, so it goes out at least once: a
 * crash in between sends it again.
 */
@ApplicationScoped
public class TellPeople {

    private static final Logger LOG = Logger.getLogger(TellPeople.class);
    private static final int AT_ONCE = 50;
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final int LONGEST_PAUSE_MINUTES = 60;

    @Inject
    WarningStore store;

    @Inject
    Instance<Channel> channels;

    @Inject
    InstantSource time;

    @Scheduled(
            every = "${rootcast.warnings.tell-every:30s}",
            delayed = "45s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    public void sendWhatIsOwed() {
        Instant now = time.instant();
        for (WarningStore.Owed owed : store.owed(now, AT_ONCE)) {
            channels.stream()
                    .filter(channel -> channel.name().equals(owed.channel()) && channel.isOn())
                    .findFirst()
                    .ifPresent(channel -> send(channel, owed, now));
        }
    }

    private void send(Channel channel, WarningStore.Owed owed, Instant now) {
        try {
            channel.send(owed.warning());
            QuarkusTransaction.requiringNew()
                    .run(() -> store.delivered(owed.warning().id(), channel.name(), now));
        } catch (IOException failed) {
            LOG.warnf("warning %s not told by %s: %s", owed.warning().id(), channel.name(), failed.getMessage());
            Instant again = now.plus(pauseAfter(owed.attempts() + 1));
            QuarkusTransaction.requiringNew()
                    .run(() -> store.failed(
                            owed.warning().id(), channel.name(), String.valueOf(failed.getMessage()), again));
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** 1, 2, 4, … minutes and then every hour. */
    static Duration pauseAfter(int attempts) {
        long minutes = attempts > 6 ? LONGEST_PAUSE_MINUTES : FIRST_PAUSE.toMinutes() << (attempts - 1);
        return Duration.ofMinutes(Math.min(minutes, LONGEST_PAUSE_MINUTES));
    }
}
