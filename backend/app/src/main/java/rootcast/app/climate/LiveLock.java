package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/** One thread at a time changes what is live, or reads from it what can change under the reader's hands. */
@ApplicationScoped
public class LiveLock {

    private final ReentrantLock lock = new ReentrantLock(true);

    public <T> T holding(Supplier<T> work) {
        lock.lock();
        try {
            return work.get();
        } finally {
            lock.unlock();
        }
    }
}
