package rootcast.app.wiring;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.inject.Produces;
import java.time.InstantSource;

/** The only place that names the system clock; everything else is given the time. */
class Time {

    @Produces
    @ApplicationScoped
    InstantSource systemTime() {
        return InstantSource.system();
    }
}
