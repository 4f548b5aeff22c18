package rootcast.app.site.rest;

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
import rootcast.app.once.OnceKey;
import rootcast.app.once.WriteSetup;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.facts.FactPosition;
import rootcast.site.Site;

/** Sites. */
@Path("/api/sites")
public class SiteResource {

    @Inject
    Caller caller;

    @Inject
    Rights rights;

    @Inject
    Places places;

    @Inject
    WriteSetup setup;

    @GET
    @Needs(Right.READ)
    public List<SiteWire> all() {
        Sites theirs = caller.mayRead();
        return places.sites().stream()
                .filter(each -> theirs.includes(each.code()))
                .map(SiteWire::of)
                .toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public SiteWire one(@RestPath String code) {
        return places.site(code)
                .filter(each -> caller.mayRead().includes(each.code()))
                .map(SiteWire::of)
                .orElseThrow(() -> Problem.notFound(Thing.SITE, code));
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = SiteWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid SiteWire wire) {
        rights.at(wire.code(), Right.SET_UP);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = SiteWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid SiteWire wire) {
        rights.at(wire.code(), Right.SET_UP);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.SITE, "sites", code);
    }

    private BooleanSupplier exists(SiteWire wire) {
        return () -> places.site(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(SiteWire wire) {
        return position -> {
            Site site = wire.site();
            places.save(site, position);
            return SiteWire.of(site);
        };
    }
}
