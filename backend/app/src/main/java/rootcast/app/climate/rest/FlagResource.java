package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.util.UUID;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.OverrideFlag;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;

/** A person's word on what the rules have flagged. */
@Path("/api/flags/{id}")
@Needs(Right.SET_UP)
public class FlagResource {

    @Inject
    Once once;

    @Inject
    OverrideFlag override;

    @Inject
    InstantSource time;

    /** @param until flags of the same sensor and kind up to here are meant, too; only the one named unless given */
    record WordWire(
            @NotBlank @Size(max = 500) String reason,
            @Nullable OffsetDateTime until) {}

    /** The flags are wrong: what they left out is used. */
    @POST
    @Path("override")
    public Response override(
            @HeaderParam("Idempotency-Key") @Nullable String key, @RestPath String id, @NotNull @Valid WordWire word) {
        return say(key, id, "override", true, word);
    }

    /** Takes an override back. */
    @POST
    @Path("restore")
    public Response restore(
            @HeaderParam("Idempotency-Key") @Nullable String key, @RestPath String id, @NotNull @Valid WordWire word) {
        return say(key, id, "restore", false, word);
    }

    private Response say(@Nullable String key, String id, String what, boolean overridden, WordWire word) {
        UUID flag;
        try {
            flag = UUID.fromString(id);
        } catch (IllegalArgumentException notAnId) {
            throw Problem.notFound(Thing.FLAG, id);
        }
        OffsetDateTime until = word.until();
        Once.Answer answer = once.write(
                OnceKey.optional(key),
                "POST /api/flags/" + id + "/" + what,
                word,
                200,
                () -> override.say(
                        flag,
                        overridden,
                        word.reason().strip(),
                        until == null ? Instant.EPOCH : until.toInstant(),
                        time.instant()));
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }
}
