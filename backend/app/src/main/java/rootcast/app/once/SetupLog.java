package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.InstantSource;
import rootcast.app.people.Caller;

/** Keeps who changed the set-up, as entries keep who recorded them. */
@ApplicationScoped
public class SetupLog {

    private static final int MOST_WHAT = 200;

    @Inject
    EntityManager database;

    @Inject
    Caller caller;

    @Inject
    InstantSource time;

    /**
     * In the transaction of the change.
     *
     * @param what method and path
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void add(String what) {
        SetupChangeRow row = new SetupChangeRow();
        row.recordedAt = time.instant();
        row.recordedBy = caller.who().name();
        row.what = what.length() > MOST_WHAT ? what.substring(0, MOST_WHAT) : what;
        database.persist(row);
    }
}
