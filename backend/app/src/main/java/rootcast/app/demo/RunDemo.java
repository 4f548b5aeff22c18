package rootcast.app.demo;

import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.store.Readings;
import rootcast.app.site.store.Places;
import rootcast.app.wiring.RootcastConfig;
import rootcast.climate.Quantity;

/**
 * In demo mode only: loads the invented business into an empty database, then feeds it with simulated readings. A
 * database that holds anything else is left alone.
 */
@ApplicationScoped
public class RunDemo {

    private static final Logger LOG = Logger.getLogger(RunDemo.class);

    @Inject
    RootcastConfig config;

    @Inject
    IntoUseCases sink;

    @Inject
    Places places;

    @Inject
    Readings readings;

    @Inject
    EntityManager database;

    @Inject
    InstantSource time;

    private volatile @Nullable Simulator simulator;

    /** After what is live has been made from the tables (priority 100), before the first request. */
    void start(@Observes @Priority(200) StartupEvent event) {
        if (!config.demo()) {
            return;
        }
        if (!isWritten("demo-start") && !places.sites().isEmpty()) {
            LOG.warn("The database holds sites of its own: no demo is loaded and nothing is simulated");
            return;
        }
        try {
            DemoScenario scenario = DemoScenario.packed();
            simulator = isWritten("demo-complete") ? resumed(scenario) : loaded(scenario);
        } catch (IOException missing) {
            throw new UncheckedIOException(missing);
        }
    }

    private Simulator loaded(DemoScenario scenario) {
        LOG.info("Loading the demo: an invented business with simulated sensors");
        DemoScenario.Told told = scenario.tell(sink.startedAt());
        DemoLoad.Played played = DemoLoad.play(scenario, told, sink);
        sink.complete();
        LOG.infof(
                "Demo loaded: %d batches, %d entries, %d readings, %d orders (%d refused)",
                played.batches(),
                played.entries(),
                played.readings(),
                played.orders(),
                played.refusedOrders().size());
        return told.simulator();
    }

    /** The sensors of a demo that was switched off are read for the time between, as from a gateway with a memory. */
    private Simulator resumed(DemoScenario scenario) {
        Instant now = time.instant();
        Instant furthestBack = now.minus(DemoScenario.READINGS_BACK);
        Instant last = readings.newest(scenario.anyHouse(), Quantity.MEDIUM_TEMPERATURE)
                .map(HouseReading::at)
                .filter(furthestBack::isBefore)
                .orElse(furthestBack);
        Simulator resumed = scenario.resumedAt(last);
        DemoLoad.readings(resumed.hoursUntil(now).readings(), sink);
        return resumed;
    }

    @Scheduled(every = "20s", delayed = "20s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void readSensors() {
        Simulator running = simulator;
        Instant now = time.instant().truncatedTo(ChronoUnit.SECONDS);
        if (running != null && running.standsAt().isBefore(now)) {
            sink.readings(running.readAllAt(now));
        }
    }

    @Transactional
    boolean isWritten(String onceKey) {
        return database.createQuery("select count(w) from WrittenOnceRow w where w.onceKey = ?1", Long.class)
                        .setParameter(1, onceKey)
                        .getSingleResult()
                > 0;
    }
}
