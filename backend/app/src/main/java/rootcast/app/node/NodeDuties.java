package rootcast.app.node;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.util.UUID;

/**
 * Duties that at most one node has at a time, as leases in the database. All of it goes by the database's clock: those
 * of the nodes need not agree.
 *
 * <p>A lease alone cannot stop a node that slept through its end. Whoever writes on the strength of a duty therefore
 * asks again inside that transaction ({@link #isHeldUntilCommit}).
 */
@ApplicationScoped
public class NodeDuties {

    /** Readings come in by MQTT at one node. */
    public static final String LISTEN_MQTT = "listen-mqtt";

    public static final String WATCH_HOUSES = "watch-houses";
    public static final String PURGE_READINGS = "purge-readings";
    public static final String CALIBRATE_CROPS = "calibrate-crops";

    @Inject
    EntityManager database;

    private final String name = UUID.randomUUID().toString();

    /** What this node is called for as long as it runs; a restarted one is another. */
    public String node() {
        return name;
    }

    /**
     * Takes the duty, or keeps it for longer.
     *
     * @return whether this node has it now
     */
    public boolean take(String duty, Duration lease) {
        return QuarkusTransaction.requiringNew()
                .call(() -> database.createNativeQuery("update node_duty set holder = ?1,"
                                        + " held_until = current_timestamp + cast(?2 as integer) * interval '1' second"
                                        + " where duty = ?3 and (holder = ?1 or held_until < current_timestamp)")
                                .setParameter(1, name)
                                .setParameter(2, Math.toIntExact(lease.toSeconds()))
                                .setParameter(3, duty)
                                .executeUpdate()
                        == 1);
    }

    /** Leaves the duty to whoever wants it next. */
    public void leave(String duty) {
        QuarkusTransaction.requiringNew()
                .run(() -> database.createNativeQuery(
                                "update node_duty set holder = '', held_until = current_timestamp - interval '1' second"
                                        + " where duty = ?1 and holder = ?2")
                        .setParameter(1, duty)
                        .setParameter(2, name)
                        .executeUpdate());
    }

    /** Whether this node has the duty; nobody else can take it before the transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public boolean isHeldUntilCommit(String duty) {
        return !database.createNativeQuery("select duty from node_duty where duty = ?1 and holder = ?2 for update")
                .setParameter(1, duty)
                .setParameter(2, name)
                .getResultList()
                .isEmpty();
    }
}
