package rootcast.app.ledger.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.InstantSource;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.Plausible;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.Entry;
import rootcast.ledger.Posting;
import rootcast.ledger.What;

/** Sticking a batch and writing down what happens to it. */
@Path("/api/batches")
public class EntryResource {

    @Inject
    Caller caller;

    @Inject
    Once once;

    @Inject
    StickBatch stickBatch;

    @Inject
    RecordEntry recordEntry;

    @Inject
    Plausible plausible;

    @Inject
    PanacheLedger ledger;

    @Inject
    InstantSource time;

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = BatchWire.Stuck.class, responseCode = "201")
    @Needs(Right.RECORD)
    public Response stick(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid BatchWire wire) {
        Once.Answer answer = once.write(
                OnceKey.optional(key),
                "POST /api/batches",
                wire,
                201,
                () -> BatchWire.Stuck.of(
                        stickBatch.stick(wire.wanted(), caller.who().name(), time.instant())));
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    @POST
    @Needs(Right.RECORD)
    @Path("{id}/entries")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = EntryWire.Written.class, responseCode = "201")
    public Response record(
            @RestPath String id, @HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid EntryWire wire) {
        String path = "/api/batches/" + id + "/entries";
        Once.Answer answer = once.write(OnceKey.required(key), "POST " + path, wire, 201, () -> {
            Batch batch = ledger.batch(id).orElseThrow(() -> Problem.notFound(Thing.BATCH, id));
            What what = wire.what(batch.trayFormat());
            var recorded = recordEntry.record(
                    id,
                    wire.happenedAt().toInstant(),
                    what,
                    wire.note(),
                    caller.who().name(),
                    time.instant());
            if (Boolean.FALSE.equals(wire.confirmed())) {
                plausible.ask(batch, Set.of(recorded.id()));
            }
            var after = recorded.after();
            return new EntryWire.Written(
                    recorded.id(),
                    recorded.position().value(),
                    what.kind(),
                    after.stage(),
                    after.alivePlants(),
                    after.benchTrays());
        });
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .location(URI.create(path))
                .entity(answer.body())
                .build();
    }

    @GET
    @Needs(Right.READ)
    @Path("{id}/entries")
    public List<EntryView> entries(@RestPath String id) {
        Batch batch = ledger.batch(id)
                .filter(found -> caller.mayRead().includes(found.site()))
                .orElseThrow(() -> Problem.notFound(Thing.BATCH, id));
        List<Entry> entries = ledger.entriesOf(id);
        Map<Long, List<Posting>> postings = ledger.postingsOf(id);
        Map<UUID, UUID> reversedBy = new HashMap<>();
        for (Entry entry : entries) {
            if (entry.what() instanceof What.Reversal reversal) {
                reversedBy.put(reversal.entry(), entry.id());
            }
        }
        Map<UUID, Integer> aliveAfter = new HashMap<>();
        for (BatchFold.Step step : BatchFold.of(batch, entries).steps()) {
            aliveAfter.put(step.entry().id(), step.after().alivePlants());
        }
        return entries.stream()
                .sorted(java.util.Comparator.comparing(Entry::happenedAt).thenComparing(Entry::position))
                .map(entry -> EntryView.of(
                        entry,
                        reversedBy.get(entry.id()),
                        aliveAfter.get(entry.id()),
                        postings.getOrDefault(entry.position().value(), List.of())))
                .toList();
    }
}
