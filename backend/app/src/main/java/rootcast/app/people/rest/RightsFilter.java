package rootcast.app.people.rest;

import io.quarkus.runtime.BlockingOperationControl;
import io.quarkus.vertx.http.runtime.CurrentVertxRequest;
import io.vertx.core.Vertx;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ResourceInfo;
import java.lang.reflect.Method;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Asking;
import rootcast.app.people.Audit;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;

/** Asks for the right that an endpoint {@link Needs}; one that needs none stated is refused to everybody. */
class RightsFilter {

    private static final int FORBIDDEN = 403;

    @Inject
    Caller caller;

    @Inject
    Audit audit;

    @Inject
    CurrentVertxRequest current;

    @Inject
    Vertx vertx;

    private final Map<Method, Needs> needs = new ConcurrentHashMap<>();

    @ServerRequestFilter
    public void check(ContainerRequestContext request, ResourceInfo endpoint) {
        Asking asking = caller.asking();
        if (asking.kind() == Asking.Kind.UNKNOWN) {
            throw new Problem(ProblemType.UNKNOWN_TOKEN, "The bearer token is no key in force of this server.");
        }
        Needs stated = needs(endpoint.getResourceMethod());
        if (stated == null) {
            throw Problem.noRight("Nobody may use this address: it states no right.");
        }
        Right right = stated.value();
        if (right != Right.OPEN && !asking.isSignedIn()) {
            throw Problem.notSignedIn();
        }
        if (!asking.may(right)) {
            throw Problem.noRight("The right %s is not yours. An owner can grant it.".formatted(right))
                    .with("right", right.name());
        }
    }

    @ServerResponseFilter
    public void list(ContainerRequestContext request, ContainerResponseContext response) {
        if (response.getStatus() != FORBIDDEN) {
            return;
        }
        String who = caller.who().name();
        String detail = request.getMethod() + " " + request.getUriInfo().getPath();
        String from = SessionCookie.address(current.getCurrent().request());
        if (BlockingOperationControl.isBlockingAllowed()) {
            audit.refused(who, "no-right", detail, from);
        } else {
            vertx.executeBlocking(() -> {
                audit.refused(who, "no-right", detail, from);
                return null;
            });
        }
    }

    private @Nullable Needs needs(Method method) {
        Needs known = needs.get(method);
        if (known == null) {
            known = method.getAnnotation(Needs.class) != null
                    ? method.getAnnotation(Needs.class)
                    : method.getDeclaringClass().getAnnotation(Needs.class);
            if (known != null) {
                needs.put(method, known);
            }
        }
        return known;
    }
}
