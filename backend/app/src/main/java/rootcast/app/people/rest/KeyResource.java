package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.ApiKey;
import rootcast.app.people.Caller;
import rootcast.app.people.Keys;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Staff;

/** Keys of devices and partners. */
@Path("/api/keys")
@Needs(Right.PEOPLE)
public class KeyResource {

    @Inject
    Keys keys;

    @Inject
    Caller caller;

    @Context
    HttpServerRequest request;

    record NewKeyWire(
            @NotNull @Size(max = 64) String name,
            @NotNull @Size(max = 100) List<@NotNull @Valid GrantWire> grants) {}

    /** @param key shown this once */
    record MadeKeyWire(UUID id, String key) {}

    record KeyWire(
            UUID id,
            String name,
            List<GrantWire> grants,
            Instant createdAt,
            String createdBy,
            @Nullable Instant lastUsedAt,
            @Nullable Instant endedAt) {
        static KeyWire of(ApiKey key) {
            return new KeyWire(
                    key.id(),
                    key.name(),
                    GrantWire.of(key.grants()),
                    key.createdAt(),
                    key.createdBy(),
                    key.lastUsedAt(),
                    key.endedAt());
        }
    }

    @GET
    public List<KeyWire> all() {
        return keys.all().stream().map(KeyWire::of).toList();
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = MadeKeyWire.class, responseCode = "201", responseDescription = "made")
    public Response make(@NotNull @Valid NewKeyWire wire) {
        Keys.Made made = keys.make(wire.name().strip(), GrantWire.grants(wire.grants()), by());
        return Response.created(URI.create("/api/keys"))
                .type(MediaType.APPLICATION_JSON)
                .entity(new MadeKeyWire(made.id(), made.key()))
                .build();
    }

    @DELETE
    @Path("{id}")
    public void end(@RestPath UUID id) {
        keys.end(id, by());
    }

    private Staff.By by() {
        return new Staff.By(caller.who().name(), SessionCookie.address(request));
    }
}
