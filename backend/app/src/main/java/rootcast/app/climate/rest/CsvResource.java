package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.csv.BackfillCsv;
import rootcast.app.climate.csv.CsvPlan;
import rootcast.app.climate.csv.CsvReport;
import rootcast.app.climate.store.Sensors;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.site.store.Places;
import rootcast.saying.Fault;
import rootcast.site.Site;

/** Readings of the past from a table: first a preview, then the same again for good. */
@Path("/api/readings/csv")
@Needs(Right.SET_UP)
public class CsvResource {

    @Inject
    BackfillCsv backfill;

    @Inject
    Places places;

    @Inject
    Sensors sensors;

    /** @param dryRun true for a preview; must be said, so that nobody writes by oversight */
    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = CsvReport.class, responseCode = "200")
    public Response take(
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @RestQuery @Nullable Boolean dryRun,
            @NotNull @Valid CsvWire wire) {
        if (dryRun == null) {
            throw Problem.malformed("dryRun", Fault.ONE_OF, List.of("true", "false"));
        }
        CsvPlan plan = wire.plan(
                places.houses(),
                places.sites().stream().collect(Collectors.toMap(Site::code, Site::zone)),
                sensors.all());
        if (dryRun) {
            return Response.ok(backfill.preview(wire.csv(), plan)).build();
        }
        Once.Answer answer = backfill.take(OnceKey.optional(key), wire, wire.csv(), plan);
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }
}
