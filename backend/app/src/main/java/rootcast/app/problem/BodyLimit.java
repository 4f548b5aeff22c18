package rootcast.app.problem;

import io.quarkus.runtime.configuration.MemorySize;
import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Answers a body that is too large before it is read, with a problem and not with an empty 413. */
@ApplicationScoped
class BodyLimit {

    private static final int TOO_LARGE = 413;

    @ConfigProperty(name = "quarkus.http.limits.max-body-size")
    MemorySize most;

    void routes(@Observes Router router) {
        router.route("/api/*").order(Integer.MIN_VALUE).handler(this::refuseLarge);
        router.errorHandler(TOO_LARGE, this::answer);
    }

    private void refuseLarge(RoutingContext request) {
        String length = request.request().getHeader("Content-Length");
        if (length != null && length.length() < 19 && Long.parseLong(length) > most.asLongValue()) {
            answer(request);
        } else {
            request.next();
        }
    }

    private void answer(RoutingContext request) {
        Problem problem = new Problem(
                TOO_LARGE,
                "body-too-large",
                "Body too large",
                "A request may hold %d bytes. Send the rest in further requests.".formatted(most.asLongValue()));
        request.response()
                .setStatusCode(TOO_LARGE)
                .putHeader("Content-Type", "application/problem+json")
                .putHeader("Connection", "close")
                .end(new JsonObject(problem.with("most", most.asLongValue())
                                .body(request.request().path()))
                        .encode());
    }
}
