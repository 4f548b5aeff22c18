package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import rootcast.app.people.Asking;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.SignIn;
import rootcast.app.problem.Problem;

/** Signing in and out, and one's own sessions and password. */
@Path("/api/session")
public class SessionResource {

    @Inject
    SignIn signIn;

    @Inject
    Caller caller;

    @Inject
    SessionCookie cookie;

    @Context
    HttpServerRequest request;

    record SignInWire(
            @NotNull @Size(max = 200) String name,
            @NotNull @Size(max = 1_000) String password) {
        /** Without the password, which belongs into no log. */
        @Override
        public String toString() {
            return "SignInWire[" + name + "]";
        }
    }

    record MeWire(String name, String displayName, List<GrantWire> grants) {}

    record PasswordChangeWire(
            @NotNull @Size(max = 1_000) String current,
            @NotNull @Size(max = 1_000) String password) {
        @Override
        public String toString() {
            return "PasswordChangeWire[]";
        }
    }

    /** @param current whether it is the one that asks */
    record SessionWire(UUID id, Instant begunAt, Instant lastSeenAt, String device, boolean current) {}

    @POST
    @Needs(Right.OPEN)
    public Response in(@NotNull @Valid SignInWire wire) {
        String secret = signIn.withPassword(wire.name(), wire.password(), SessionCookie.from(request));
        return Response.noContent().cookie(cookie.holding(secret, request)).build();
    }

    /** Who is signed in and with which grants. */
    @GET
    @Needs(Right.OPEN)
    public MeWire who() {
        Asking asking = caller.asking();
        if (!asking.isSignedIn()) {
            throw Problem.notSignedIn();
        }
        return new MeWire(asking.who().name(), asking.displayName(), GrantWire.of(asking.grants()));
    }

    /** Signs out; when nobody is signed in, nothing is to be done. */
    @DELETE
    @Needs(Right.OPEN)
    public Response out() {
        signIn.out(caller.asking());
        return Response.noContent().cookie(cookie.gone(request)).build();
    }

    /** Ends all other sessions of the person. */
    @PUT
    @Path("password")
    @Needs(Right.SIGNED_IN)
    public void changePassword(@NotNull @Valid PasswordChangeWire wire) {
        signIn.changePassword(caller.asking(), wire.current(), wire.password(), SessionCookie.from(request));
    }

    @GET
    @Path("all")
    @Needs(Right.SIGNED_IN)
    public List<SessionWire> all() {
        Asking asking = caller.asking();
        return signIn.sessionsOf(asking).stream()
                .map(each -> new SessionWire(
                        each.id(),
                        each.begunAt(),
                        each.lastSeenAt(),
                        each.device(),
                        each.secretHash().equals(asking.credential())))
                .toList();
    }

    /** Signs out everywhere, here too. */
    @DELETE
    @Path("all")
    @Needs(Right.SIGNED_IN)
    public Response outEverywhere() {
        signIn.outEverywhere(caller.asking());
        return Response.noContent().cookie(cookie.gone(request)).build();
    }

    @DELETE
    @Path("all/{id}")
    @Needs(Right.SIGNED_IN)
    public void end(@RestPath UUID id) {
        signIn.end(caller.asking(), id);
    }
}
