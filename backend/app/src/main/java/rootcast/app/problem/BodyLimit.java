package rootcast.app.problem;

import io.vertx.core.json.JsonObject;
import io.vertx.ext.web.Router;
import io.vertx.ext.web.RoutingContext;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.ws.rs.ext.Provider;
import jakarta.ws.rs.ext.ReaderInterceptor;
import jakarta.ws.rs.ext.ReaderInterceptorContext;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * Answers a body that is too large with a problem: before it is read if its length is told, else once too much has come.
 *
 * <p>The platform's own limit lies above this one; it would hang up without a word.
 */
@Provider
@ApplicationScoped
public class BodyLimit implements ReaderInterceptor {

    private static final long MOST_BYTES = 4L * 1024 * 1024;
    private static final int TOO_LARGE = 413;

    void routes(@Observes Router router) {
        router.route("/api/*").order(Integer.MIN_VALUE).handler(BodyLimit::refuseLarge);
        router.errorHandler(TOO_LARGE, BodyLimit::answer);
    }

    @Override
    public Object aroundReadFrom(ReaderInterceptorContext body) throws IOException {
        body.setInputStream(new Counted(body.getInputStream()));
        return body.proceed();
    }

    private static void refuseLarge(RoutingContext request) {
        String length = request.request().getHeader("Content-Length");
        if (length != null && length.length() < 19 && Long.parseLong(length) > MOST_BYTES) {
            answer(request);
        } else {
            request.next();
        }
    }

    private static void answer(RoutingContext request) {
        request.response()
                .setStatusCode(TOO_LARGE)
                .putHeader("Content-Type", "application/problem+json")
                .putHeader("Connection", "close")
                .end(new JsonObject(tooLarge().body(request.request().path())).encode());
    }

    private static Problem tooLarge() {
        return new Problem(
                        ProblemType.BODY_TOO_LARGE,
                        "A request may hold %d bytes. Send the rest in further requests.".formatted(MOST_BYTES))
                .with("most", MOST_BYTES);
    }

    /** Passes on what it is given until that is too much. */
    private static final class Counted extends FilterInputStream {
        private long readBytes;

        Counted(InputStream body) {
            super(body);
        }

        @Override
        public int read() throws IOException {
            int next = super.read();
            count(next < 0 ? 0 : 1);
            return next;
        }

        @Override
        public int read(byte[] into, int from, int most) throws IOException {
            int got = super.read(into, from, most);
            count(Math.max(0, got));
            return got;
        }

        private void count(int more) {
            readBytes += more;
            if (readBytes > MOST_BYTES) {
                throw tooLarge();
            }
        }
    }
}
