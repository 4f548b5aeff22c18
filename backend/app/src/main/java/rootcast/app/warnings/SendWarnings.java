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
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import rootcast.app.node.NodeDuties;
import rootcast.app.warnings.store.PendingDeliveries;

/**
 * Sends what is pending. Each delivery is claimed by one node for a while, sent, and only then marked as sent: a node that
 * dies in between lets its claim run out, and another sends it again.
 */
@ApplicationScoped
public class SendWarnings {

    private static final Logger LOG = Logger.getLogger(SendWarnings.class);
    private static final int AT_ONCE = 50;
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final int LONGEST_PAUSE_MINUTES = 60;

    /** Far longer than any channel waits for the other side. */
    private static final Duration CLAIM = Duration.ofMinutes(3);

    @Inject
    PendingDeliveries pending;

    @Inject
    NodeDuties duties;

    @Inject
    Instance<Channel> channels;

    @Inject
    InstantSource time;

    @Scheduled(
            every = "${rootcast.warnings.send-every:30s}",
            delayed = "45s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    public void sendPending() {
        Instant now = time.instant();
        Map<String, Channel> on =
                channels.stream().filter(Channel::isOn).collect(Collectors.toMap(Channel::name, Function.identity()));
        for (int sent = 0; sent < AT_ONCE && !on.isEmpty(); sent++) {
            // one by one: a claim is to cover one sending, however slow the others are
            Optional<PendingDeliveries.Pending> next = pending.claim(on.keySet(), now, duties.node(), CLAIM);
            if (next.isEmpty()) {
                return;
            }
            send(on.get(next.get().channel()), next.get(), now);
        }
    }

    private void send(Channel channel, PendingDeliveries.Pending one, Instant now) {
        try {
            channel.send(one.warning());
            QuarkusTransaction.requiringNew().run(() -> pending.sent(one, now));
        } catch (IOException failed) {
            LOG.warnf("warning %s not sent by %s: %s", one.warning().id(), channel.name(), failed.getMessage());
            Instant again = now.plus(pauseAfter(one.attempts() + 1));
            QuarkusTransaction.requiringNew()
                    .run(() -> pending.failed(one, String.valueOf(failed.getMessage()), again));
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
