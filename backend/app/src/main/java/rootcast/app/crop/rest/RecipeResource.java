package rootcast.app.crop.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.CropRecipes;
import rootcast.app.crop.RecipeText;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.crop.store.Recipes;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;

/** The climate and care that a crop is to have, phase by phase. */
@Path("/api/crops/{code}/recipe")
public class RecipeResource {

    @Inject
    SetupLog log;

    @Inject
    Rights rights;

    @Inject
    Catalogue catalogue;

    @Inject
    CropRecipes inForce;

    @Inject
    Recipes recipes;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @GET
    @Needs(Right.READ)
    public RecipeWire one(@RestPath String code) {
        known(code);
        return recipes.newest(code).map(RecipeWire::of).orElseGet(() -> RecipeWire.of(code, inForce.of(code)));
    }

    @GET
    @Needs(Right.READ)
    @Path("versions")
    public List<RecipeWire> versions(@RestPath String code) {
        known(code);
        return recipes.versions(code).stream().map(RecipeWire::of).toList();
    }

    /** The same recipe again makes no version. */
    @PUT
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = RecipeWire.class, responseCode = "200")
    @Needs(Right.SET_UP)
    public Response change(
            @RestPath String code,
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @NotNull @Valid RecipeWire wire) {
        RecipeText text = wire.text(code);
        Once.Answer answer = once.write(OnceKey.optional(key), "PUT /api/crops/" + code + "/recipe", wire, 200, () -> {
            rights.everywhere(Right.SET_UP);
            known(code);
            log.add("PUT /api/crops/" + code + "/recipe");
            Optional<Recipes.Stored> before = recipes.newest(code);
            return RecipeWire.of(
                    before.isPresent() && before.get().text().equals(text)
                            ? before.get()
                            : recipes.add(code, text, time.instant()));
        });
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private void known(String code) {
        if (catalogue.crop(code).isEmpty()) {
            throw Problem.notFound(Thing.CROP, code);
        }
    }
}
