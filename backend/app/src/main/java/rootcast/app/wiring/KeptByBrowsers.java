package rootcast.app.wiring;

import io.vertx.core.http.HttpServerResponse;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;

/**
 * How long a browser keeps what it was given. A file of the screens has a hash of itself in its name and never changes; the page
 * names those files, so an old page would ask for files that an update has taken away.
 */
@ApplicationScoped
class KeptByBrowsers {

    private static final String FOR_GOOD = "public, immutable, max-age=31536000";
    private static final String ASKED_AGAIN = "no-cache";

    void routes(@Observes Router router) {
        router.get("/assets/*").order(-1_000).handler(request -> told(request, FOR_GOOD));
        router.get("/").order(-1_000).handler(request -> told(request, ASKED_AGAIN));
    }

    private static void told(RoutingContext request, String howLong) {
        HttpServerResponse response = request.response();
        response.headersEndHandler(ended -> {
            if (response.getStatusCode() < 400) {
                response.putHeader("Cache-Control", howLong);
            }
        });
        request.next();
    }
}
