package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import rootcast.facts.FactPosition;

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
    public FactPosition next() {
        FactHeadRow head = database.find(FactHeadRow.class, FactHeadRow.ONLY, LockModeType.PESSIMISTIC_WRITE);
        head.positionNo++;
        return new FactPosition(head.positionNo);
    }

    /** The newest position as the holder of the head has left it. */
    @Transactional(Transactional.TxType.MANDATORY)
    public FactPosition held() {
        return new FactPosition(database.find(FactHeadRow.class, FactHeadRow.ONLY).positionNo);
    }

    /** The next position, for a change of the set-up. */
    @Transactional(Transactional.TxType.MANDATORY)
    public FactPosition nextForSetup() {
        FactPosition next = next();
        database.find(FactHeadRow.class, FactHeadRow.ONLY).setupPosition = next.value();
        return next;
    }

    /** The next position, for care, a treatment or a recipe. */
    @Transactional(Transactional.TxType.MANDATORY)
    public FactPosition nextForCare() {
        FactPosition next = next();
        database.find(FactHeadRow.class, FactHeadRow.ONLY).carePosition = next.value();
        return next;
    }

    /**
     * @param position the last position given out and committed, as this transaction sees it
     * @param setup    the last of these that changed the set-up
     * @param care     the last of these that changed care, treatments or recipes
     */
    public record Last(FactPosition position, FactPosition setup, FactPosition care) {}

    @Transactional
    public Last last() {
        Object[] row = database.createQuery(
                        "select h.positionNo, h.setupPosition, h.carePosition from FactHeadRow h", Object[].class)
                .getSingleResult();
        return new Last(
                new FactPosition((Long) row[0]), new FactPosition((Long) row[1]), new FactPosition((Long) row[2]));
    }
}
