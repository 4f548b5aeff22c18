package rootcast.app.warnings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.jboss.logging.Logger;
import rootcast.app.node.NodeChannel;
import rootcast.app.node.NodeDuties;
import rootcast.app.node.NodeSaid;
import rootcast.app.node.OtherNodes;

/**
 * Says to the open screens of every node that warnings have changed: to this node's at once, to the others' by way of the
 * database.
 */
@ApplicationScoped
public class AnnounceWarnings {

    private static final Logger LOG = Logger.getLogger(AnnounceWarnings.class);

    /** Ids of 36 characters, so that a message keeps within PostgreSQL's 7 999 bytes. */
    private static final int MOST_TOLD_AT_ONCE = 150;

    private static final String PARTED_BY = " ";

    @Inject
    Event<WarningsChanged> changed;

    @Inject
    OtherNodes others;

    @Inject
    NodeDuties thisNode;

    /** After they are committed. */
    void of(String site, List<UUID> ids) {
        changed.fire(new WarningsChanged(site, ids));
        for (int from = 0; from < ids.size(); from += MOST_TOLD_AT_ONCE) {
            tell(site, ids.subList(from, Math.min(ids.size(), from + MOST_TOLD_AT_ONCE)));
        }
    }

    private void tell(String site, List<UUID> ids) {
        StringBuilder text =
                new StringBuilder(thisNode.node()).append(PARTED_BY).append(site);
        ids.forEach(id -> text.append(PARTED_BY).append(id));
        try {
            others.tell(NodeChannel.WARNINGS, text.toString());
        } catch (RuntimeException fault) {
            // The warnings are written; screens of other nodes see them when they next ask.
            LOG.warnf("other nodes were not told of warnings at %s: %s", site, fault.getMessage());
        }
    }

    void heard(@Observes NodeSaid said) {
        if (said.channel() != NodeChannel.WARNINGS || said.text().isEmpty()) {
            return;
        }
        List<String> parts = Arrays.asList(said.text().split(PARTED_BY));
        if (!parts.get(0).equals(thisNode.node())) {
            changed.fire(new WarningsChanged(
                    parts.get(1),
                    parts.subList(2, parts.size()).stream()
                            .map(UUID::fromString)
                            .toList()));
        }
    }
}
