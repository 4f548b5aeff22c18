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
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;

/** Tray formats. */
@Path("/api/tray-formats")
public class TrayFormatResource {

    @Inject
    Rights rights;

    @Inject
    Catalogue catalogue;

    @Inject
    WriteSetup setup;

    @GET
    @Needs(Right.READ)
    public List<TrayFormatWire> all() {
        return catalogue.trayFormats().stream().map(TrayFormatWire::of).toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public TrayFormatWire one(@RestPath String code) {
        return catalogue
                .trayFormat(code)
                .map(TrayFormatWire::of)
                .orElseThrow(() -> Problem.notFound(Thing.TRAY_FORMAT, code));
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = TrayFormatWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid TrayFormatWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = TrayFormatWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid TrayFormatWire wire) {
        rights.everywhere(Right.SET_UP);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.TRAY_FORMAT, "tray-formats", code);
    }

    private BooleanSupplier exists(TrayFormatWire wire) {
        return () -> catalogue.trayFormat(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(TrayFormatWire wire) {
        return position -> {
            TrayFormat format = wire.trayFormat();
            catalogue.trayFormat(format.code()).ifPresent(before -> keepsItsCells(before, format));
            catalogue.save(format, position);
            return TrayFormatWire.of(format);
        };
    }

    /** Batches were counted in these cells and promised by this sale count. */
    private static void keepsItsCells(TrayFormat before, TrayFormat after) {
        if (before.cells() != after.cells()) {
            throw Problem.notAllowed("cells", after.cells(), Fault.FIXED, before.cells());
        }
        if (before.saleCount() != after.saleCount()) {
            throw Problem.notAllowed("saleCount", after.saleCount(), Fault.FIXED, before.saleCount());
        }
    }
}
