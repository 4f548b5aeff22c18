package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import rootcast.app.node.NodeChannel;
import rootcast.app.node.NodeSaid;

/** Hears that other nodes have committed; the projector looks by the clock too. */
@ApplicationScoped
class CommitListener {

    @Inject
    Commits commits;

    void heard(@Observes NodeSaid said) {
        if (said.channel() == NodeChannel.COMMITS) {
            commits.wake();
        }
    }
}
