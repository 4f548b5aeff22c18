package rootcast.app.climate.mqtt;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.IngestCount;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Saying;

/**
 * Messages waiting to be stored. One thread takes all that wait, stores them in one transaction and only then tells the
 * broker: a message without that word comes again, and is then found to be stored already.
 *
 * <p>While one transaction runs the next messages gather, so the busier the broker the more share a transaction.
 */
@ApplicationScoped
class Arrivals {

    private static final Logger LOG = Logger.getLogger(Arrivals.class);

    /** More than this waiting, the broker is asked to hold. */
    static final int MANY = 20_000;

    private static final int MOST_TOGETHER = 10_000;
    private static final long LOOK_MS = 200;

    @Inject
    MessageStore store;

    @Inject
    IngestCount count;

    @Inject
    ObjectMapper json;

    private final Map<String, Instant> lastStamp = new ConcurrentHashMap<>();
    private volatile @Nullable Writer writer;

    void add(Message message) {
        Writer now = writer;
        if (now != null) {
            now.waiting.add(message);
        }
    }

    int waiting() {
        Writer now = writer;
        return now == null ? 0 : now.waiting.size();
    }

    /** Whether what comes is stored; no longer so once another node has the duty. */
    boolean isRunning() {
        Writer now = writer;
        return now != null && !now.stopped;
    }

    synchronized void start() {
        stop(Duration.ZERO);
        store.startListening();
        Writer next = new Writer();
        Thread thread = new Thread(next, "readings by MQTT");
        thread.setDaemon(true);
        next.thread = thread;
        writer = next;
        thread.start();
    }

    /** What waits comes again: nobody was told that it is kept. The thread is not interrupted, since H2 would close its file. */
    synchronized void stop(Duration patience) {
        Writer last = writer;
        writer = null;
        if (last != null) {
            last.end(patience);
        }
    }

    /** From one start to its stop. */
    private final class Writer implements Runnable, Keeping.Store<Stamped> {
        private final BlockingQueue<Message> waiting = new LinkedBlockingQueue<>();
        private volatile boolean stopped;
        private @Nullable Thread thread;

        @Override
        public void run() {
            Keeping<Stamped> keeping = new Keeping<>(this, this::pause, () -> stopped);
            List<Message> together = new ArrayList<>();
            try {
                while (!stopped) {
                    together.clear();
                    Message first = waiting.poll(LOOK_MS, TimeUnit.MILLISECONDS);
                    if (first != null) {
                        together.add(first);
                        waiting.drainTo(together, MOST_TOGETHER - 1);
                        if (keeping.keepAll(stamped(together))) {
                            together.forEach(each -> each.acknowledge().run());
                        }
                    }
                }
            } catch (InterruptedException ended) {
                Thread.currentThread().interrupt();
            } catch (RuntimeException | Error fault) {
                LOG.error("no readings by MQTT are stored until the connection is made again", fault);
            } finally {
                stopped = true;
            }
        }

        private void pause(Duration length) {
            synchronized (this) {
                try {
                    if (!stopped) {
                        wait(length.toMillis()); // woken early, it is tried again early
                    }
                } catch (InterruptedException ended) {
                    stopped = true;
                    Thread.currentThread().interrupt();
                }
            }
        }

        void end(Duration patience) {
            synchronized (this) {
                stopped = true;
                notifyAll();
            }
            Thread running = thread;
            if (running != null && !patience.isZero()) {
                try {
                    running.join(patience.toMillis());
                } catch (InterruptedException ended) {
                    Thread.currentThread().interrupt();
                }
            }
        }

        @Override
        public void keep(List<Stamped> together) {
            if (!store.keep(together)) {
                stopped = true;
                throw new IllegalStateException("another node listens now");
            }
        }

        @Override
        public void setApart(Stamped message, String reason) {
            store.setApart(message, reason);
        }
    }

    private List<Stamped> stamped(List<Message> together) {
        List<Stamped> readable = new ArrayList<>(together.size());
        for (Message message : together) {
            try {
                Payload payload = Payload.read(message.text(), json);
                Instant at = payload.at();
                if (at == null && message.retained()) {
                    refused(message, "retained-without-time", Saying.of(ReadingRemark.KEPT_WITHOUT_TIME));
                } else {
                    boolean ownTime = at != null;
                    readable.add(new Stamped(message, payload.value(), ownTime ? at : ofItsOwn(message), ownTime));
                }
            } catch (Payload.Unreadable unreadable) {
                refused(message, "malformed", unreadable.why());
            }
        }
        return readable;
    }

    private void refused(Message message, String kind, Saying why) {
        count.received(IngestCount.MQTT, 1);
        count.refused(IngestCount.MQTT, kind, message.shown(), why, message.arrivedAt());
    }

    /** Two messages of one topic must not share a moment, however fast they come. */
    private Instant ofItsOwn(Message message) {
        Instant last = lastStamp.get(message.topic());
        Instant at = last == null || message.arrivedAt().isAfter(last) ? message.arrivedAt() : last.plusNanos(1_000);
        if (lastStamp.size() > MANY) {
            lastStamp.clear();
        }
        lastStamp.put(message.topic(), at);
        return at;
    }
}
