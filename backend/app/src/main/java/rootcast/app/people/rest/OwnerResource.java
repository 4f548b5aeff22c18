package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import rootcast.app.people.FirstOwner;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;

/** The owner's account, at the first start only. */
@Path("/api/owner")
public class OwnerResource {

    @Inject
    FirstOwner firstOwner;

    @Context
    HttpServerRequest request;

    /** @param secret as the log of the first start shows it */
    record OwnerWire(
            @NotNull @Size(max = 200) String secret,
            @NotNull @Size(max = 64) String name,
            @NotBlank @Size(max = 120) String displayName,
            @NotNull @Size(max = 1_000) String password) {
        @Override
        public String toString() {
            return "OwnerWire[" + name + "]";
        }
    }

    @POST
    @Needs(Right.OPEN)
    @APIResponse(responseCode = "201", description = "made; sign in with it")
    public Response make(@NotNull @Valid OwnerWire wire) {
        firstOwner.make(
                wire.secret(),
                wire.name().strip(),
                wire.displayName().strip(),
                wire.password(),
                SessionCookie.address(request));
        return Response.created(URI.create("/api/session")).build();
    }
}
