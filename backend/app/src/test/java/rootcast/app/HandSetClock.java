package rootcast.app;

import io.quarkus.test.Mock;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;

/**
 * The application's clock during tests: it stands still until a test moves it on, and never goes back.
 *
 * <p>It begins on Monday 2 March 2026 (2026-W10), 10:00 UTC.
 */
@Mock
@ApplicationScoped
public class HandSetClock implements InstantSource {

    private volatile Instant now = Instant.parse("2026-03-02T10:00:00Z");

    @Override
    public Instant instant() {
        return now;
    }

    public void moveOn(Duration by) {
        if (by.isNegative()) {
            throw new IllegalArgumentException("the clock does not go back by " + by);
        }
        now = now.plus(by);
    }
}
