package rootcast.app.climate.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import jakarta.inject.Inject;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.RecordReadings;
import rootcast.app.climate.SetupMaps;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;

/** Readings by HTTP: one or many, in any order. */
@Path("/api/readings")
@Needs(Right.POST_READINGS)
public class ReadingResource {

    @Inject
    Rights rights;

    @Inject
    Once once;

    @Inject
    RecordReadings recordReadings;

    @Inject
    SetupMaps setup;

    @Inject
    SentReadings sentReadings;

    @Inject
    IngestCount count;

    @Inject
    InstantSource time;

    /** A reading that is no good does not stop the others; if none is any good, the answer is a problem. */
    record Taken(int accepted, int duplicates, List<RecordReadings.Refused> rejected) {}

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = Taken.class, responseCode = "200")
    @Consumes(MediaType.APPLICATION_JSON)
    public Response take(
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @RequestBody(
                            content =
                                    @org.eclipse.microprofile.openapi.annotations.media.Content(
                                            schema = @Schema(implementation = ReadingWire[].class)))
                    @NotNull
                    byte[] body)
            throws JsonProcessingException {
        List<SentReadings.One> sent = sentReadings.read(body); // before the one place of a writer is asked for
        Once.Answer answer = once.writeBulk(
                OnceKey.optional(key), "POST /api/readings", SentReadings.fingerprint(body), 200, () -> taken(sent));
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private Taken taken(List<SentReadings.One> sent) {
        Instant now = time.instant();
        SetupMaps.Maps maps = setup.now();
        List<RecordReadings.Numbered> good = new ArrayList<>(sent.size());
        List<RecordReadings.Refused> bad = new ArrayList<>();
        int index = 0;
        for (SentReadings.One each : sent) {
            try {
                good.add(new RecordReadings.Numbered(index, each.reading(maps)));
            } catch (ReadingWire.Unusable unusable) {
                bad.add(new RecordReadings.Refused(index, unusable.getMessage(), unusable.why()));
            }
            index++;
        }
        good.stream()
                .map(each -> maps.siteOf().get(each.reading().house()))
                .distinct()
                .forEach(site -> rights.at(site, Right.POST_READINGS));
        List<RecordReadings.Refused> unreadable = List.copyOf(bad);
        RecordReadings.Recorded recorded = recordReadings.record(good, now);
        bad.addAll(recorded.refused());
        bad.sort(Comparator.comparingInt(RecordReadings.Refused::index));
        count.taken(IngestCount.HTTP, index, recorded, number -> "reading " + number, now);
        unreadable.forEach(
                each -> count.refused(IngestCount.HTTP, "malformed", "reading " + each.index(), each.why(), now));
        if (!bad.isEmpty() && recorded.accepted() == 0 && recorded.duplicates() == 0) {
            throw new Problem(
                            ProblemType.NO_READING_TAKEN,
                            "Reading 0: " + bad.get(0).reason() + (bad.size() > 1 ? " (and others)." : "."))
                    .with("accepted", 0)
                    .with("duplicates", 0)
                    .with("rejected", bad);
        }
        return new Taken(recorded.accepted(), recorded.duplicates(), bad);
    }
}
