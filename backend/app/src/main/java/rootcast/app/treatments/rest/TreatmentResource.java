package rootcast.app.treatments.rest;

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
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.UUID;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.app.treatments.AppliedTreatment;
import rootcast.app.treatments.RecordTreatment;
import rootcast.app.treatments.store.Treatments;
import rootcast.rounds.Treatment;
import rootcast.saying.Fault;
import rootcast.site.House;
import rootcast.site.Site;

/** The record of what was applied. */
@Path("/api/treatments")
public class TreatmentResource {

    private static final Duration USUAL = Duration.ofDays(90);

    @Inject
    Caller caller;

    @Inject
    RecordTreatment recordTreatment;

    @Inject
    Treatments treatments;

    @Inject
    Places places;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = TreatmentView.class, responseCode = "201")
    @Needs(Right.RECORD)
    public Response record(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid TreatmentWire wire) {
        return answer(once.write(
                OnceKey.optional(key),
                "POST /api/treatments",
                wire,
                201,
                () -> TreatmentView.of(
                        recordTreatment.record(wire.wanted(), caller.who().name(), time.instant()), time.instant())));
    }

    @GET
    @Needs(Right.READ)
    @Path("{id}")
    public TreatmentView one(@RestPath UUID id) {
        return treatments
                .one(id)
                .filter(treatment -> caller.mayRead().includes(treatment.site()))
                .map(treatment -> TreatmentView.of(treatment, time.instant()))
                .orElseThrow(() -> Problem.notFound(Thing.TREATMENT, id.toString()));
    }

    @POST
    @Needs(Right.RECORD)
    @Path("{id}/reversal")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = TreatmentView.class, responseCode = "200")
    public Response reverse(
            @RestPath UUID id,
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @NotNull @Valid ReversalWire wire) {
        return answer(once.write(
                OnceKey.optional(key),
                "POST /api/treatments/" + id + "/reversal",
                wire,
                200,
                () -> TreatmentView.of(
                        recordTreatment.reverse(
                                id, wire.reason().strip(), caller.who().name(), time.instant()),
                        time.instant())));
    }

    /** Newest first, reversed ones too; the last 90 days unless said otherwise. */
    @GET
    @Needs(Right.READ)
    public List<TreatmentView> all(
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String house,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String to) {
        Instant now = time.instant();
        Instant until = to == null ? now.plus(Duration.ofDays(1)) : instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : instant("from", from);
        if (!since.isBefore(until)) {
            throw Problem.malformed("from", Fault.NO_SPAN);
        }
        List<String> sites = site != null
                ? List.of(site)
                : house != null
                        ? places.house(house).map(House::site).stream().toList()
                        : places.sites().stream().map(each -> each.code()).toList();
        Sites theirs = caller.mayRead();
        return sites.stream()
                .filter(theirs::includes)
                .flatMap(each -> treatments.of(each, since, until).stream())
                .filter(each -> house == null || each.treatment().house().equals(house))
                .map(each -> TreatmentView.of(each, now))
                .toList();
    }

    /** The houses that must not be entered now. Whoever shows a house, or a way into one, asks here. */
    @GET
    @Needs(Right.READ)
    @Path("closed-houses")
    public List<ClosedHouseView> closedHouses(@RestQuery @Nullable String site) {
        Instant now = time.instant();
        Sites theirs = caller.mayRead();
        return places.sites().stream()
                .map(Site::code)
                .filter(each -> (site == null || site.equals(each)) && theirs.includes(each))
                .flatMap(each -> Treatment.closedHouses(inForce(each, now), now).values().stream()
                        .map(closing -> ClosedHouseView.of(each, closing)))
                .toList();
    }

    private List<Treatment> inForce(String site, Instant now) {
        return treatments.of(site, now.minus(RecordTreatment.LONGEST_REENTRY), now.plusMillis(1)).stream()
                .filter(AppliedTreatment::isInForce)
                .map(AppliedTreatment::treatment)
                .toList();
    }

    private static Instant instant(String field, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException notATime) {
            throw Problem.malformed(field, Fault.NOT_AN_INSTANT);
        }
    }

    private static Response answer(Once.Answer answer) {
        Response.ResponseBuilder built = Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body());
        return answer.status() == 201
                ? built.location(URI.create("/api/treatments")).build()
                : built.build();
    }
}
