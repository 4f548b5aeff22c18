package rootcast.app.people;

import io.quarkus.arc.Arc;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.quarkus.vertx.http.runtime.security.QuarkusHttpUser;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;

/**
 * Tells who is asking, wherever a command is carried out or a question answered.
 *
 * <p>Asked on the thread of the request. What works on after it, such as a stream, keeps {@link #asking} and looks now
 * and then whether it is {@link #stillIn}.
 */
@ApplicationScoped
public class Caller {

    @Inject
    CurrentVertxRequest request;

    @Inject
    Credentials credentials;

    /** Who is asking now; {@link Who#SYSTEM} outside of a request. */
    public Who who() {
        return asking().who();
    }

    /** Which sites the caller may read. */
    public Sites mayRead() {
        return asking().sites(Right.READ);
    }

    /** Who is asking, with what was granted to them. */
    public Asking asking() {
        if (!Arc.container().requestContext().isActive()) {
            return Asking.SYSTEM;
        }
        RoutingContext http = request.getCurrent();
        if (http == null) {
            return Asking.SYSTEM;
        }
        return http.user() instanceof QuarkusHttpUser user
                        && user.getSecurityIdentity().getAttribute(Asking.ATTRIBUTE) instanceof Asking asking
                ? asking
                : Asking.NOBODY;
    }

    /**
     * Whether somebody who asked before is still signed in and holds what they held then. Costs a look into the database
     * every few seconds at most, so not for an event loop.
     */
    public boolean stillIn(Asking before) {
        String credential = before.credential();
        return credential == null || before.equals(credentials.asking(credential));
    }
}
