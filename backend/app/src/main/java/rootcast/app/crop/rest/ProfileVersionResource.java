package rootcast.app.crop.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.InstantSource;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.ProfileVersion;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.learning.Evidence;

/** The versions of a crop's profile, and which of them counts. */
@Path("/api/crops/{code}/profiles")
public class ProfileVersionResource {

    @Inject
    SetupLog log;

    @Inject
    Rights rights;

    @Inject
    Catalogue catalogue;

    @Inject
    Once once;

    @Inject
    FactHead head;

    @Inject
    InstantSource time;

    @Inject
    ObjectMapper json;

    /** @param pinned whether no other version may be adopted until this one is adopted without a pin; false if not given */
    public record AdoptionWire(@Nullable Boolean pinned) {}

    @GET
    @Needs(Right.READ)
    public List<ProfileVersionWire> all(@RestPath String code) {
        List<ProfileVersion> versions = catalogue.versions(code);
        if (versions.isEmpty()) {
            throw Problem.notFound(Thing.CROP, code);
        }
        return versions.stream().map(this::wire).toList();
    }

    /** Without a body, or without {@code pinned}, it is not pinned. */
    @POST
    @Needs(Right.SET_UP)
    @Path("{version}/adoption")
    @Consumes(MediaType.WILDCARD)
    @RequestBody(
            required = false,
            content =
                    @Content(
                            mediaType = MediaType.APPLICATION_JSON,
                            schema = @Schema(implementation = AdoptionWire.class)))
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = ProfileVersionWire.class, responseCode = "200")
    public Response adopt(
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @RestPath String code,
            @RestPath int version,
            @Nullable String body)
            throws JsonProcessingException {
        boolean pinned =
                body != null && !body.isBlank() && Boolean.TRUE.equals(json.readValue(body, AdoptionWire.class).pinned);
        String path = "POST /api/crops/%s/profiles/%d/adoption".formatted(code, version);
        Once.Answer answer = once.write(OnceKey.optional(key), path, pinned, 200, () -> {
            rights.everywhere(Right.SET_UP);
            if (catalogue.crop(code).isEmpty()) {
                throw Problem.notFound(Thing.CROP, code);
            }
            log.add(path);
            catalogue.adopt(code, version, pinned, time.instant());
            head.nextForSetup();
            return all(code).stream()
                    .filter(each -> each.version() == version)
                    .findFirst()
                    .orElseThrow();
        });
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private ProfileVersionWire wire(ProfileVersion version) {
        return ProfileVersionWire.of(version, evidence(version.evidence()));
    }

    private @Nullable Evidence evidence(@Nullable String stored) {
        if (stored == null) {
            return null;
        }
        try {
            // Stored by an earlier version of the program it may have more members, or fewer.
            return json.readerFor(Evidence.class)
                    .without(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                    .without(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                    .readValue(stored);
        } catch (JsonProcessingException unreadable) {
            throw new IllegalStateException("evidence that was stored cannot be read", unreadable);
        }
    }
}
