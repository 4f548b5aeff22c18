package rootcast.app.climate.store;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;

/**
 * Marks of messages without a time of their own, written with the readings they made. A broker gives a message that it
 * holds to be unacknowledged again under its old number, also to another node: by its mark it is known to be stored.
 */
@ApplicationScoped
@Transactional
public class TakenMessages {

    /** Transactions whose marks are kept. Acknowledgements follow each at once, so those of many are long received. */
    private static final int MOST_BATCHES = 500;

    @Inject
    EntityManager database;

    /** In the transaction that stores what they say. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void add(Collection<String> marks) {
        database.createNativeQuery("insert into mqtt_taken (batch_no, messages)"
                        + " select coalesce(max(batch_no), 0) + 1, cast(?1 as text) from mqtt_taken")
                .setParameter(1, String.join(" ", marks))
                .executeUpdate();
        database.createNativeQuery("delete from mqtt_taken where batch_no <= (select max(batch_no) from mqtt_taken) - "
                        + MOST_BATCHES)
                .executeUpdate();
    }

    /** Those of one transaction after the other, the oldest first. */
    public List<List<String>> all() {
        return database
                .createNativeQuery("select cast(messages as varchar) from mqtt_taken order by batch_no", String.class)
                .getResultList()
                .stream()
                .map(marks -> List.of(((String) marks).split(" ")))
                .toList();
    }
}
