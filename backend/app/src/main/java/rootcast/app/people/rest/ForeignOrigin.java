package rootcast.app.people.rest;

import io.vertx.core.http.HttpMethod;
import io.vertx.core.http.HttpServerRequest;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.Locale;
import java.util.Set;
import rootcast.app.people.Audit;
import rootcast.app.people.PeopleConfig;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;

/**
 * Refuses what another site's page has a browser send here. What is no browser says no origin and is not concerned.
 *
 * <p>Sources: RFC 6454 (the Origin header), W3C Fetch Metadata (Sec-Fetch-Site).
 */
@ApplicationScoped
class ForeignOrigin {

    private static final Set<HttpMethod> SAFE = Set.of(HttpMethod.GET, HttpMethod.HEAD, HttpMethod.OPTIONS);

    @Inject
    PeopleConfig config;

    @Inject
    Audit audit;

    void routes(@Observes Router router) {
        router.route("/*").order(Integer.MIN_VALUE + 1).handler(this::refuseForeign);
    }

    private void refuseForeign(RoutingContext context) {
        HttpServerRequest request = context.request();
        if (SAFE.contains(request.method()) || isOurs(request)) {
            context.next();
            return;
        }
        Problem problem = new Problem(
                ProblemType.FOREIGN_ORIGIN,
                "Changes are taken from Rootcast's own pages. If this is one, its public address is not set up here.");
        context.vertx()
                .executeBlocking(() -> {
                    audit.refused(
                            "nobody",
                            "foreign-origin",
                            request.method() + " " + context.normalizedPath() + " from " + request.getHeader("Origin"),
                            SessionCookie.address(request));
                    return null;
                })
                .onComplete(any -> context.response()
                        .setStatusCode(problem.status())
                        .putHeader("Content-Type", "application/problem+json")
                        .end(new JsonObject(problem.body(context.normalizedPath())).encode()));
    }

    private boolean isOurs(HttpServerRequest request) {
        String site = request.getHeader("Sec-Fetch-Site");
        if ("cross-site".equals(site) || "same-site".equals(site)) {
            return false;
        }
        String origin = request.getHeader("Origin");
        if (origin == null) {
            return true;
        }
        return config.publicAddress()
                .map(address -> origin(address).equals(origin.toLowerCase(Locale.ROOT)))
                .orElseGet(() -> isTheHostAsked(origin, request));
    }

    /** The scheme is left out: behind a proxy that does not say so we do not know it. */
    private static boolean isTheHostAsked(String origin, HttpServerRequest request) {
        int scheme = origin.indexOf("://");
        String host = request.authority() == null ? "" : request.authority().toString();
        return scheme > 0
                && withoutUsualPort(origin.substring(scheme + 3)).equalsIgnoreCase(withoutUsualPort(host))
                && !host.isEmpty();
    }

    private static String withoutUsualPort(String authority) {
        return authority.replaceFirst(":(80|443)$", "");
    }

    private static String origin(String address) {
        URI uri = URI.create(address);
        String port = uri.getPort() < 0 ? "" : ":" + uri.getPort();
        return (uri.getScheme() + "://" + uri.getHost() + port).toLowerCase(Locale.ROOT);
    }
}
