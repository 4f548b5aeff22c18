package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.node.NodeChannel;
import rootcast.app.node.OtherNodes;
import rootcast.facts.FactPosition;

/** What a write sets going: the other nodes hear of it from the database, this one's projector at once. */
@ApplicationScoped
class WriteFollowUp {

    @Inject
    OtherNodes otherNodes;

    @Inject
    Commits commits;

    @Inject
    PositionOfAnswer answered;

    /** Inside the transaction; PostgreSQL delivers it with the commit and forgets it with a rollback. */
    void tellOtherNodes(FactPosition position) {
        otherNodes.tell(NodeChannel.COMMITS, Long.toString(position.value()));
    }

    /** After the commit. Nothing here can fail the write. */
    void committed(FactPosition position) {
        answered.set(position);
        commits.committed(position);
    }
}
