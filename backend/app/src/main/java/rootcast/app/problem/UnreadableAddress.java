package rootcast.app.problem;

import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import rootcast.saying.Fault;

/** Refuses an address that holds a zero byte: no code does, and PostgreSQL cannot even look for it. */
@ApplicationScoped
class UnreadableAddress {

    void routes(@Observes Router router) {
        router.route("/api/*").order(Integer.MIN_VALUE).handler(UnreadableAddress::refuseZeroBytes);
    }

    private static void refuseZeroBytes(RoutingContext request) {
        if (!request.request().uri().contains("%00")) {
            request.next();
            return;
        }
        Problem problem = Problem.malformed("address", Fault.ZERO_BYTE);
        request.response()
                .setStatusCode(problem.status())
                .putHeader("Content-Type", "application/problem+json")
                .end(new JsonObject(problem.body(request.request().path())).encode());
    }
}
