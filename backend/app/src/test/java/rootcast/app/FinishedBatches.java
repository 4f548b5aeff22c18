package rootcast.app;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;

/** Batches of a nursery that went through all stages. Its houses have no sensor: a day counts as a day at 22 °C. */
public final class FinishedBatches {

    private FinishedBatches() {}

    /** Stuck so many days ago and seen callused, rooted and ready after so many days each; gives its id. */
    public static String seen(Nursery nursery, double agoDays, double toCallus, double toRoot, double toReady) {
        String batch = nursery.stuck(2, days(agoDays));
        Instant at = nursery.now().minus(days(agoDays)).plus(days(toCallus));
        stage(nursery, batch, "CALLUS", at);
        stage(nursery, batch, "ROOT", at.plus(days(toRoot)));
        stage(nursery, batch, "READY", at.plus(days(toRoot)).plus(days(toReady)));
        return batch;
    }

    private static void stage(Nursery nursery, String batch, String stage, Instant at) {
        nursery.enter(batch, Nursery.entry("stage", at, Map.of("stage", stage))).statusCode(201);
    }

    public static Duration days(double days) {
        return Duration.ofMinutes(Math.round(days * 1440));
    }
}
