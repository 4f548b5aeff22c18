package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import rootcast.facts.FactPosition;

/**
 * Tells that facts were committed: by this node as soon as they are, by others when the database says so. It only counts
 * and wakes; nothing that happens because of it can reach back into a write.
 */
@ApplicationScoped
public class Commits {

    private FactPosition own = FactPosition.START;
    private boolean news;

    /** The newest position that a write on this node was answered with. */
    public synchronized FactPosition own() {
        return own;
    }

    void committed(FactPosition position) {
        synchronized (this) {
            if (position.compareTo(own) > 0) {
                own = position;
            }
        }
        wake();
    }

    /** There may be something new. */
    public synchronized void wake() {
        news = true;
        notifyAll();
    }

    /** Waits until there may be something new, or for so long; what came since the last call counts. */
    public synchronized void await(Duration most) throws InterruptedException {
        if (!news) {
            wait(Math.max(1, most.toMillis()));
        }
        news = false;
    }
}
