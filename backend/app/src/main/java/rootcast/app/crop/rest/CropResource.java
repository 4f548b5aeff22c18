package rootcast.app.crop.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.InstantSource;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.OnceKey;
import rootcast.app.once.WriteSetup;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.facts.FactPosition;

/** Crops with the profile in force. */
@Path("/api/crops")
public class CropResource {

    @Inject
    Rights rights;

    @Inject
    Catalogue catalogue;

    @Inject
    InstantSource time;

    @Inject
    WriteSetup setup;

    @GET
    @Needs(Right.READ)
    public List<CropWire> all() {
        return catalogue.crops().stream().map(CropWire::of).toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public CropWire one(@RestPath String code) {
        return catalogue.crop(code).map(CropWire::of).orElseThrow(() -> Problem.notFound(Thing.CROP, code));
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = CropWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid CropWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = CropWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid CropWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.CROP, "crops", code);
    }

    private BooleanSupplier exists(CropWire wire) {
        return () -> catalogue.crop(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(CropWire wire) {
        return position -> {
            var before = catalogue.crop(wire.code()).map(crop -> crop.crop().profile());
            return CropWire.of(catalogue.save(wire.sourcedCrop(before), position, time.instant()));
        };
    }
}
