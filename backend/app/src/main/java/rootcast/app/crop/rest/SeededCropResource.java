package rootcast.app.crop.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.SeededCrops;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.crop.MistNeed;

/** Crop profiles that come with the application, each value with its source, and taking several of them at once. */
@Path("/api/seeded-crops")
public class SeededCropResource {

    private static final String PATH = "POST /api/seeded-crops";

    @Inject
    Rights rights;

    @Inject
    SeededCrops seeded;

    @Inject
    Catalogue catalogue;

    @Inject
    SetupLog log;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    /**
     * @param recipeSource where the mist need comes from
     * @param taken        whether the business has a crop of this code
     */
    record SeededCropWire(
            String code, String name, ProfileWire profile, MistNeed mistNeed, String recipeSource, boolean taken) {}

    /** @param crops codes of profiles that come with the application */
    record WantedCropsWire(@NotEmpty @Size(max = 100) List<@NotNull String> crops) {}

    /** Codes of the crops that there are now. */
    record TakenCropsWire(List<String> crops) {}

    @GET
    @Needs(Right.READ)
    public List<SeededCropWire> all() {
        return seeded.all().values().stream()
                .map(each -> new SeededCropWire(
                        each.crop().code(),
                        each.crop().name(),
                        ProfileWire.of(each.sourced()),
                        each.recipe().recipe().mistNeed(),
                        each.recipe().source(),
                        catalogue.crop(each.crop().code()).isPresent()))
                .toList();
    }

    /** Makes crops of them, profile and recipe, all or none. */
    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = TakenCropsWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response take(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid WantedCropsWire wanted) {
        rights.everywhere(Right.SET_UP);
        Once.Answer answer = once.write(OnceKey.optional(key), PATH, wanted, 201, () -> {
            Instant now = time.instant();
            wanted.crops().forEach(code -> take(code, now));
            return new TakenCropsWire(wanted.crops());
        });
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private void take(String code, Instant now) {
        SeededCrops.Seeded found = seeded.all().get(code);
        if (found == null) {
            throw Problem.unknownCode("crops", code);
        }
        if (catalogue.crop(code).isPresent()) {
            throw Problem.codeTaken(Thing.CROP, code);
        }
        log.add(PATH + " " + code);
        seeded.save(found, now);
    }
}
