package rootcast.app.climate.mqtt;

import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Keeps on until every message is stored, or is set apart because it can never be: nothing else may be acknowledged.
 *
 * <p>A fault of the database is waited out, however long. One that comes from what is to be stored is narrowed down to
 * its message by halving, so that the others are stored.
 *
 * @param <M> a message
 */
final class Keeping<M> {

    private static final Logger LOG = Logger.getLogger(Keeping.class);
    static final Duration FIRST_PAUSE = Duration.ofMillis(250);
    static final Duration LONGEST_PAUSE = Duration.ofSeconds(10);

    /** Classes of SQLSTATE that speak of the data: 22 value, 23 constraint. All others speak of the database. */
    private static final Set<String> OF_THE_DATA = Set.of("22", "23");

    /** Packages whose exceptions mean that a transaction was not to be had or did not end well. */
    private static final List<String> OF_THE_DATABASE = List.of(
            "jakarta.persistence.",
            "jakarta.transaction.",
            "org.hibernate.",
            "io.quarkus.narayana.",
            "com.arjuna.",
            "io.agroal.");

    /** Where messages go; both throw if they could not be written. */
    interface Store<M> {

        /** In one transaction: all or none. */
        void keep(List<M> together);

        void setApart(M message, String reason);
    }

    private final Store<M> store;
    private final Consumer<Duration> pause;
    private final BooleanSupplier stopped;

    Keeping(Store<M> store, Consumer<Duration> pause, BooleanSupplier stopped) {
        this.store = store;
        this.pause = pause;
        this.stopped = stopped;
    }

    /** @return whether all are kept; if not, it was stopped, and none may be acknowledged */
    boolean keepAll(List<M> together) {
        if (together.isEmpty()) {
            return true;
        }
        RuntimeException fault = kept(() -> store.keep(together));
        if (fault == null) {
            return true;
        }
        if (stopped.getAsBoolean()) {
            return false;
        }
        if (together.size() > 1) {
            int half = together.size() / 2;
            return keepAll(together.subList(0, half)) && keepAll(together.subList(half, together.size()));
        }
        LOG.errorf(fault, "a message that cannot be stored is set apart: %s", together.get(0));
        String reason = String.valueOf(fault.getMessage());
        return kept(() -> store.setApart(together.get(0), reason)) == null && !stopped.getAsBoolean();
    }

    /** Does it as soon as the database lets it; gives the fault if that lies in what is to be written. */
    private @Nullable RuntimeException kept(Runnable write) {
        Duration next = FIRST_PAUSE;
        while (true) {
            try {
                write.run();
                return null;
            } catch (RuntimeException fault) {
                if (stopped.getAsBoolean() || isOfTheData(fault)) {
                    return fault;
                }
                LOG.warnf("messages could not be stored, trying again in %s: %s", next, fault);
                pause.accept(next);
                next = next.multipliedBy(2).compareTo(LONGEST_PAUSE) < 0 ? next.multipliedBy(2) : LONGEST_PAUSE;
            }
        }
    }

    /**
     * Whether waiting cannot help. What a transaction, a pool or a connection throws is the database's; what the database
     * says of a value, and what our own code throws over one, is the message's.
     */
    static boolean isOfTheData(Throwable fault) {
        boolean fromTheDatabase = false;
        for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
            if (cause instanceof SQLException sql) {
                String state = sql.getSQLState();
                return state != null && state.length() == 5 && OF_THE_DATA.contains(state.substring(0, 2));
            }
            String type = cause.getClass().getName();
            fromTheDatabase |= OF_THE_DATABASE.stream().anyMatch(type::startsWith);
        }
        return !fromTheDatabase;
    }
}
