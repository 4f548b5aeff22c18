package rootcast.app.warnings;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.warnings.store.WarningStore;

/** Writes down that somebody has seen a warning; the first one stays. */
@ApplicationScoped
public class AcknowledgeWarning {

    @Inject
    Rights rights;

    @Inject
    WarningStore store;

    @Inject
    AnnounceWarnings announce;

    /** To be called inside {@link rootcast.app.once.Once}. */
    public WrittenWarning acknowledge(UUID id, String by, @Nullable String text, Instant now) {
        WrittenWarning before = known(id);
        rights.at(before.site(), Right.ACKNOWLEDGE_WARNINGS);
        if (before.acknowledgedAt() == null) {
            store.acknowledge(id, now, by, text);
        }
        return known(id);
    }

    /** After it is committed. */
    public void announce(UUID id) {
        announce.of(known(id).site(), List.of(id));
    }

    private WrittenWarning known(UUID id) {
        return store.one(id).orElseThrow(() -> Problem.notFound(Thing.WARNING, id.toString()));
    }
}
