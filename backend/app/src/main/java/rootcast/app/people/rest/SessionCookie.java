package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.NewCookie;
import java.util.Optional;
import rootcast.app.people.PeopleConfig;
import rootcast.app.people.SignIn;

/** The cookie of a session: no script reads it, and no other site's page sends it. */
@ApplicationScoped
public class SessionCookie {

    static final String NAME = "rootcast-session";

    @Inject
    PeopleConfig config;

    public NewCookie holding(String secret, HttpServerRequest request) {
        return cookie(secret, Math.toIntExact(config.longest().toSeconds()), request);
    }

    NewCookie gone(HttpServerRequest request) {
        return cookie("", 0, request);
    }

    /** Where a request comes from; behind a proxy what that says, if forwarding is on. */
    public static SignIn.From from(HttpServerRequest request) {
        return new SignIn.From(
                address(request),
                Optional.ofNullable(request.getHeader("User-Agent")).orElse(""));
    }

    static String address(HttpServerRequest request) {
        return request.remoteAddress() == null
                ? ""
                : String.valueOf(request.remoteAddress().hostAddress());
    }

    private static NewCookie cookie(String value, int seconds, HttpServerRequest request) {
        return new NewCookie.Builder(NAME)
                .value(value)
                .path("/")
                .maxAge(seconds)
                .httpOnly(true)
                .secure("https".equals(request.scheme()))
                .sameSite(NewCookie.SameSite.STRICT)
                .build();
    }
}
