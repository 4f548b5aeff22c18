package rootcast.app.flow;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.CountDownLatch;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.live.LiveFeed;
import rootcast.app.once.Commits;
import rootcast.app.once.FactHead;
import rootcast.app.outlook.BatchesSnapshot;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.facts.FactPosition;

/**
 * Carries facts from the tables to the snapshot that all readers share: {@link #step} is the main path, on one thread.
 *
 * <p>The ledger is its own outbox. A snapshot holds every fact up to a position; the next step reads those after it, so a
 * crash costs a delay and no loss, and every node does the same for itself. No write waits for it and none can fail by
 * it. If a step breaks off, all is rebuilt from the tables.
 */
@ApplicationScoped
public class Projector {

    private static final Logger LOG = Logger.getLogger(Projector.class);

    /** The hour and the day go on without any fact; and the net below the database's notifications. */
    private static final Duration AT_LEAST_EVERY = Duration.ofSeconds(5);

    private static final Duration AFTER_A_FAULT = Duration.ofSeconds(1);

    @Inject
    FactHead head;

    @Inject
    FactReader facts;

    @Inject
    Commits commits;

    @Inject
    Snapshots snapshots;

    @Inject
    LiveFeed feed;

    @Inject
    InstantSource time;

    private @Nullable Projection projection;
    private volatile boolean stopped;
    private final CountDownLatch ended = new CountDownLatch(1);

    /** Before the first request, and after whatever else writes at start. */
    void start(@Observes @Priority(100) StartupEvent event) {
        step();
        Snapshot first = snapshots.now();
        LOG.infof(
                "%d batches live at position %d",
                first.part(BatchesSnapshot.class).live().size(),
                first.position().value());
        Thread thread = new Thread(this::run, "projector");
        thread.setDaemon(true);
        thread.start();
    }

    void stop(@Observes ShutdownEvent event) throws InterruptedException {
        stopped = true;
        commits.wake();
        ended.await(5, java.util.concurrent.TimeUnit.SECONDS);
    }

    private void run() {
        try {
            while (!stopped) {
                commits.await(AT_LEAST_EVERY);
                if (!stopped) {
                    carryOn();
                }
            }
        } catch (InterruptedException told) {
            Thread.currentThread().interrupt();
        } finally {
            ended.countDown();
        }
    }

    private void carryOn() throws InterruptedException {
        try {
            step();
        } catch (RuntimeException fault) {
            if (stopped) {
                return; // the database was closed under it
            }
            projection = null; // half a step may be in it
            snapshots.fallBehind();
            LOG.error("facts could not be carried on; all will be rebuilt from the tables", fault);
            commits.await(AFTER_A_FAULT);
            commits.wake();
        }
    }

    /** From the facts after the last snapshot to the next one and to every open screen. */
    private void step() {
        FactHead.Last last = head.last();
        Instant now = time.instant();
        Snapshot before = snapshots.now();
        Projection.Step step;
        if (projection == null) {
            Projection fresh = new Projection();
            step = fresh.begin(hours -> facts.all(last.position(), now, hours));
            projection = fresh;
            feed.startOver();
        } else {
            boolean setupChanged = last.setup().compareTo(before.position()) > 0;
            step = projection.next(read(before.position(), last.position(), setupChanged, now));
        }
        feed.tell(step.changes(), step.snapshot());
        snapshots.publish(step.snapshot());
    }

    private Facts read(FactPosition from, FactPosition to, boolean setupChanged, Instant now) {
        return to.compareTo(from) > 0 ? facts.between(from, to, setupChanged, now) : Facts.none(to, now);
    }
}
