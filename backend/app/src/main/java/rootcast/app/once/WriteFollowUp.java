package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import rootcast.facts.FactPosition;

/** What a write sets going: the other nodes hear of it from the database, this one's projector at once. */
@ApplicationScoped
class WriteFollowUp {

    @Inject
    EntityManager database;

    @Inject
    Commits commits;

    @Inject
    PositionOfAnswer answered;

    @ConfigProperty(name = "quarkus.datasource.db-kind")
    String databaseKind;

    /** Inside the transaction; PostgreSQL delivers it with the commit and forgets it with a rollback. */
    void tellOtherNodes(FactPosition position) {
        if (databaseKind.equals("postgresql")) {
            database.createNativeQuery("select pg_notify('" + CommitListener.CHANNEL + "', ?1)", Object.class)
                    .setParameter(1, Long.toString(position.value()))
                    .getSingleResult();
        }
    }

    /** After the commit. Nothing here can fail the write. */
    void committed(FactPosition position) {
        answered.set(position);
        commits.committed(position);
    }
}
