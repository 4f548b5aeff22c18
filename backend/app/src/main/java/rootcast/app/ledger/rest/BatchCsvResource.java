package rootcast.app.ledger.rest;

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
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.csv.BatchCsvPlan;
import rootcast.app.ledger.csv.BatchCsvReport;
import rootcast.app.ledger.csv.ImportBatches;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/** Batches that already stand on the benches, from a table: first a preview, then the same again for good. */
@Path("/api/batches/csv")
@Needs(Right.RECORD)
public class BatchCsvResource {

    @Inject
    ImportBatches importBatches;

    /** @param dryRun true for a preview; must be said, so that nobody writes by oversight */
    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = BatchCsvReport.class, responseCode = "200")
    public Response take(
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @RestQuery @Nullable Boolean dryRun,
            @NotNull @Valid BatchCsvWire wire) {
        if (dryRun == null) {
            throw Problem.malformed("dryRun", Fault.ONE_OF, List.of("true", "false"));
        }
        BatchCsvPlan plan = wire.plan();
        if (dryRun) {
            return Response.ok(importBatches.preview(wire.csv(), plan)).build();
        }
        Once.Answer answer = importBatches.take(OnceKey.required(key), wire, wire.csv(), plan);
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }
}
