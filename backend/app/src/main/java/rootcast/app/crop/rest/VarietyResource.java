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
import rootcast.crop.Variety;
import rootcast.facts.FactPosition;

/** Varieties. */
@Path("/api/varieties")
public class VarietyResource {

    @Inject
    Rights rights;

    @Inject
    Catalogue catalogue;

    @Inject
    WriteSetup setup;

    @GET
    @Needs(Right.READ)
    public List<VarietyWire> all() {
        return catalogue.varieties().stream().map(VarietyWire::of).toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public VarietyWire one(@RestPath String code) {
        return catalogue.variety(code).map(VarietyWire::of).orElseThrow(() -> Problem.notFound(Thing.VARIETY, code));
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = VarietyWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid VarietyWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = VarietyWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid VarietyWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.VARIETY, "varieties", code);
    }

    private BooleanSupplier exists(VarietyWire wire) {
        return () -> catalogue.variety(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(VarietyWire wire) {
        return position -> {
            Variety variety = wire.variety();
            if (catalogue.crop(variety.crop()).isEmpty()) {
                throw Problem.unknownCode("crop", variety.crop());
            }
            catalogue.save(variety, position);
            return VarietyWire.of(variety);
        };
    }
}
