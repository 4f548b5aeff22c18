package rootcast.app.once;

import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;

/** The queue in front of the head row: people's writes in order of arrival, bulk writes when nobody else waits. */
final class Turn {

    enum Kind {
        SHORT,
        BULK
    }

    /** Bulk writes get a turn after so many short ones, however many more wait: readings must not starve. */
    private static final int SHORT_IN_A_ROW = 50;

    private final ReentrantLock lock = new ReentrantLock(true);
    private final Condition free = lock.newCondition();
    private boolean taken;
    private int shortWaiting;
    private int bulkWaiting;
    private int shortInARow;

    <T> T taken(Kind kind, Supplier<T> work) {
        take(kind);
        try {
            return work.get();
        } finally {
            giveBack();
        }
    }

    private void take(Kind kind) {
        lock.lock();
        try {
            if (kind == Kind.SHORT) {
                shortWaiting++;
                while (taken || (shortInARow >= SHORT_IN_A_ROW && bulkWaiting > 0)) {
                    free.awaitUninterruptibly();
                }
                shortWaiting--;
                shortInARow++;
            } else {
                bulkWaiting++;
                while (taken || (shortWaiting > 0 && shortInARow < SHORT_IN_A_ROW)) {
                    free.awaitUninterruptibly();
                }
                bulkWaiting--;
                shortInARow = 0;
            }
            taken = true;
        } finally {
            lock.unlock();
        }
    }

    private void giveBack() {
        lock.lock();
        try {
            taken = false;
            free.signalAll();
        } finally {
            lock.unlock();
        }
    }
}
