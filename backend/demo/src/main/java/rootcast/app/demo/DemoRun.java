package rootcast.app.demo;

import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.io.IOException;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.mqtt.MqttIngest;
import rootcast.app.climate.store.Readings;
import rootcast.app.wiring.Invented;
import rootcast.climate.Quantity;

/** Tells the scenario once, then reads the simulated sensors for as long as the application runs. */
@ApplicationScoped
class DemoRun implements Invented {

    private static final Logger LOG = Logger.getLogger(DemoRun.class);

    @Inject
    UseCaseSink sink;

    @Inject
    Readings readings;

    @Inject
    MqttIngest mqtt;

    @Inject
    InstantSource time;

    private @Nullable Simulator simulator;

    /** Before what is live is made: made once from everything, it need not follow every entry. */
    void start(@Observes @Priority(150) StartupEvent event) throws IOException {
        DemoScenario scenario = DemoScenario.packed();
        if (sink.isSomebodysOwn(scenario.setup())) {
            throw new IllegalStateException(
                    "the data folder holds sites that are not the demo's; give the demo a folder"
                            + " of its own, or start without it");
        }
        Instant startAt = sink.startAt(scenario.setup(), time.instant());
        String anyHouse = scenario.setup().houses().get(0).code();
        simulator = readings.newest(anyHouse, Quantity.MEDIUM_TEMPERATURE, 1).stream()
                .findFirst()
                .filter(newest -> !newest.at().isBefore(startAt))
                .map(newest -> scenario.resumedAt(newest.at()))
                .orElseGet(() -> tell(scenario, startAt));
        sink.sensors(scenario.setup().houses().stream()
                .map(DemoSetup.Building::house)
                .toList());
        sinkReadings(simulator.hoursUntil(time.instant()).readings());
        LOG.infof("demo: %d simulated houses", scenario.setup().houses().size());
    }

    /** May begin anew after an attempt that broke off; what is written already is then not written again. */
    private Simulator tell(DemoScenario scenario, Instant startAt) {
        DemoScenario.Told told = scenario.tell(startAt);
        DemoLoad.Played played = DemoLoad.play(scenario, told, sink);
        LOG.infof(
                "demo: %d batches, %d entries, %d readings, %d orders of which %d found too few open trays",
                played.batches(),
                played.entries(),
                played.readings(),
                played.orders(),
                played.refusedOrders().size());
        return told.simulator();
    }

    @Scheduled(every = "20s", delayed = "5s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void read() {
        if (simulator != null) {
            // what the broker does not take goes the short way, so that the demo stays alive without it
            sinkReadings(simulator.readAllAt(time.instant()).stream()
                    .filter(reading -> !mqtt.send(
                            DemoSensors.topicOf(reading.house(), reading.quantity()), reading.value(), reading.at()))
                    .toList());
        }
    }

    private void sinkReadings(List<DemoReading> taken) {
        if (!taken.isEmpty()) {
            sink.readings(taken);
        }
    }
}
