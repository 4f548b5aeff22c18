package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import rootcast.ledger.LedgerPosition;

/** Gives out positions. Whoever holds the head is the only writer until its transaction ends. */
@ApplicationScoped
public class FactHead {

    @Inject
    EntityManager database;

    /** Waits for the head and keeps it until the transaction ends. */
    @Transactional(Transactional.TxType.MANDATORY)
    public void hold() {
        database.find(FactHeadRow.class, FactHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
    }

    /** The next position; only inside {@link Once}. */
    @Transactional(Transactional.TxType.MANDATORY)
    public LedgerPosition next() {
        FactHeadRow head = database.find(FactHeadRow.class, FactHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
        head.positionNo++;
        return new LedgerPosition(head.positionNo);
    }

    /** The last position given out and committed, as this transaction sees it. */
    @Transactional
    public LedgerPosition last() {
        return new LedgerPosition(database.createQuery("select h.positionNo from FactHeadRow h", Long.class)
                .getSingleResult());
    }
}
