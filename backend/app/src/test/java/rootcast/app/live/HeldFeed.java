package rootcast.app.live;

import jakarta.annotation.Priority;
import jakarta.decorator.Decorator;
import jakarta.decorator.Delegate;
import jakarta.enterprise.inject.Any;
import jakarta.inject.Inject;
import java.util.concurrent.CountDownLatch;
import rootcast.app.snapshot.Snapshot;

/** Stops the projector where it hands a step on, as a disk or a database that hangs would, until a test lets it go. */
@Decorator
@Priority(1)
class HeldFeed implements LiveFeed {

    private static volatile CountDownLatch gate = new CountDownLatch(0);

    @Inject
    @Delegate
    @Any
    LiveFeed delegate;

    static void hold() {
        gate = new CountDownLatch(1);
    }

    static void letGo() {
        gate.countDown();
    }

    @Override
    public void startOver() {
        delegate.startOver();
    }

    @Override
    public void tell(Changes changes, Snapshot now) {
        try {
            gate.await();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
        delegate.tell(changes, now);
    }
}
