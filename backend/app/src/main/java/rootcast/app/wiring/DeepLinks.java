package rootcast.app.wiring;

import io.vertx.core.http.HttpMethod;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/** Gives the page for every address that the page itself reads; files and {@code /api} that are not there stay 404. */
@ApplicationScoped
class DeepLinks {

    void routes(@Observes Router router) {
        router.get("/*").order(10_000 - 1).handler(DeepLinks::toThePage);
    }

    private static void toThePage(RoutingContext request) {
        String path = request.normalizedPath();
        boolean file = path.substring(path.lastIndexOf('/') + 1).contains(".");
        boolean ours = path.startsWith("/api/") || path.equals("/api") || path.startsWith("/q/") || path.equals("/");
        if (request.request().method() == HttpMethod.GET && !file && !ours) {
            request.reroute("/");
        } else {
            request.next();
        }
    }
}
