package rootcast.app.people.rest;

import io.quarkus.security.identity.SecurityIdentity;
import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.eclipse.microprofile.jwt.JsonWebToken;
import org.eclipse.microprofile.openapi.annotations.Operation;
import rootcast.app.people.DirectorySignIn;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;

/**
 * Sign-in by a directory (OpenID Connect). The platform has sent the browser there and back before this is reached; what
 * is left is to begin a session of our own.
 */
@Path("/api/session/directory")
public class DirectoryResource {

    /** A redirect would still count as begun by the directory's page, and a strict cookie would not be sent along. */
    private static final String ON_TO_THE_PAGE = "<!doctype html><meta charset=\"utf-8\"><title>Rootcast</title>"
            + "<meta http-equiv=\"refresh\" content=\"0;url=/\"><a href=\"/\">Rootcast</a>";

    @Inject
    SecurityIdentity identity;

    @Inject
    DirectorySignIn directory;

    @Inject
    SessionCookie cookie;

    @Context
    HttpServerRequest request;

    @GET
    @Needs(Right.OPEN)
    @Operation(hidden = true)
    public Response in() {
        if (!(identity.getPrincipal() instanceof JsonWebToken token)) {
            throw Problem.notFound(Thing.DIRECTORY, "directory");
        }
        String secret =
                directory.in(token.getName(), token.getClaimNames(), token::getClaim, SessionCookie.from(request));
        return Response.ok(ON_TO_THE_PAGE, MediaType.TEXT_HTML_TYPE)
                .cookie(cookie.holding(secret, request))
                .build();
    }
}
