package rootcast.app.wiring;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import java.time.Duration;
import java.time.InstantSource;
import java.time.temporal.ChronoUnit;

/** The only place that names the system clock; everything else is given the time. */
class Time {

    /** What the tables keep of an instant. */
    private static final Duration KEPT = Duration.of(1, ChronoUnit.MICROS);

    @Produces
    @ApplicationScoped
    InstantSource systemTime() {
        return InstantSource.tick(InstantSource.system(), KEPT);
    }
}
