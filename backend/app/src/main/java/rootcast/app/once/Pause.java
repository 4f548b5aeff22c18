package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.concurrent.locks.LockSupport;

/** Lets time pass between two attempts. */
@ApplicationScoped
class Pause {

    void of(Duration time) {
        LockSupport.parkNanos(time.toNanos());
    }
}
