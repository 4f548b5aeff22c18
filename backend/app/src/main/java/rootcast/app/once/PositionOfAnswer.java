package rootcast.app.once;

import io.quarkus.arc.Arc;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import org.jspecify.annotations.Nullable;
import rootcast.facts.FactPosition;

/** The position that a request's own write was committed at, for its answer. */
@ApplicationScoped
public class PositionOfAnswer {

    @Inject
    OfRequest ofRequest;

    @RequestScoped
    static class OfRequest {
        @Nullable
        FactPosition position;

        void set(FactPosition position) {
            this.position = position;
        }

        @Nullable
        FactPosition get() {
            return position;
        }
    }

    /** Null where the request has written nothing. */
    public @Nullable FactPosition get() {
        return isRequest() ? ofRequest.get() : null;
    }

    void set(FactPosition position) {
        if (isRequest()) {
            ofRequest.set(position);
        }
    }

    private static boolean isRequest() {
        return Arc.container().requestContext().isActive();
    }
}
