package rootcast.app.people;

import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.HttpHeaders;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Optional;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.wiring.RootcastConfig;

/** Accepts the script token and refuses any other: a wrong key must not open what no key would. */
class TokenFilter {

    private static final String BEARER = "Bearer ";

    @Inject
    RootcastConfig config;

    @ServerRequestFilter
    public void check(ContainerRequestContext request) {
        String shown = request.getHeaderString(HttpHeaders.AUTHORIZATION);
        if (shown != null && !isToken(shown, config.token())) {
            throw new Problem(401, "unknown-token", "Unknown token", "The bearer token is not the one of this server.");
        }
    }

    private static boolean isToken(@Nullable String shown, Optional<String> token) {
        return token.isPresent()
                && shown.regionMatches(true, 0, BEARER, 0, BEARER.length())
                && MessageDigest.isEqual(
                        shown.substring(BEARER.length()).strip().getBytes(StandardCharsets.UTF_8),
                        token.get().getBytes(StandardCharsets.UTF_8));
    }
}
