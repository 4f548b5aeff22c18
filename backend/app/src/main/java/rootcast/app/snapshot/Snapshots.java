package rootcast.app.snapshot;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.function.Predicate;
import rootcast.facts.FactPosition;

/** The snapshot of now. Readers take it once and answer from it; only {@code flow} publishes. */
@ApplicationScoped
public class Snapshots {

    private volatile Snapshot now = Snapshot.NOTHING;
    private volatile boolean behind;

    public Snapshot now() {
        return now;
    }

    public synchronized void publish(Snapshot next) {
        now = next;
        behind = false;
        notifyAll();
    }

    /** Publishing has stopped for longer than anybody should wait for it; the next snapshot ends that. */
    public synchronized void fallBehind() {
        behind = true;
        notifyAll();
    }

    /** The snapshot of now, waited for until it holds a position; an older one when the time is up or there is no hope. */
    public Snapshot atLeast(FactPosition position, Duration most) {
        return when(snapshot -> behind || snapshot.isAtLeast(position), most);
    }

    /** The snapshot of now, waited for until it is as wanted; as it is when the time is up. */
    public Snapshot when(Predicate<Snapshot> wanted, Duration most) {
        if (wanted.test(now)) {
            return now;
        }
        long endNanos = System.nanoTime() + most.toNanos();
        synchronized (this) {
            try {
                for (long left = most.toMillis(); left > 0 && !wanted.test(now); ) {
                    wait(left);
                    left = (endNanos - System.nanoTime()) / 1_000_000;
                }
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
            }
        }
        return now;
    }
}
