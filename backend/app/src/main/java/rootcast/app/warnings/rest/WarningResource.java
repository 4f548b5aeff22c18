package rootcast.app.warnings.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Comparator;
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
import rootcast.app.warnings.AcknowledgeWarning;
import rootcast.app.warnings.WatchHouses;
import rootcast.app.warnings.store.WarningStore;
import rootcast.saying.Fault;
import rootcast.site.Site;

/** The log of warnings. */
@Path("/api/warnings")
public class WarningResource {

    private static final Duration USUAL = Duration.ofDays(14);

    @Inject
    Caller caller;

    @Inject
    WatchHouses watchHouses;

    @Inject
    AcknowledgeWarning acknowledge;

    @Inject
    WarningStore store;

    @Inject
    Places places;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    /**
     * Warnings that stood at some moment from {@code from} until before {@code to}, newest first; the last 14 days if left
     * out. The hours that have ended are looked at before it answers.
     */
    @GET
    @Needs(Right.READ)
    public List<WarningView> all(
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String house,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String to) {
        Instant now = time.instant();
        Instant until = to == null ? now.plusSeconds(1) : instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : instant("from", from);
        if (!since.isBefore(until)) {
            throw Problem.malformed("from", Fault.NO_SPAN);
        }
        Sites theirs = caller.mayRead();
        List<Site> sites = sites(site, house).stream()
                .filter(each -> theirs.includes(each.code()))
                .toList();
        sites.forEach(watchHouses::watch);
        return sites.stream()
                .flatMap(each -> store.of(each.code(), since, until).stream())
                .filter(written -> house == null || written.warning().house().equals(house))
                .map(WarningView::of)
                .sorted(Comparator.comparing(WarningView::since)
                        .reversed()
                        .thenComparing(WarningView::house)
                        .thenComparing(WarningView::kind))
                .toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{id}")
    public WarningView one(@RestPath UUID id) {
        return store.one(id)
                .filter(written -> caller.mayRead().includes(written.site()))
                .map(WarningView::of)
                .orElseThrow(() -> Problem.notFound(Thing.WARNING, id.toString()));
    }

    /** What it rests on: what its rule saw hour by hour from shortly before it began, in its unit. */
    @GET
    @Needs(Right.READ)
    @Path("{id}/evidence")
    public EvidenceView evidence(@RestPath UUID id) {
        return store.one(id)
                .filter(written -> caller.mayRead().includes(written.site()))
                .map(watchHouses::seen)
                .map(EvidenceView::of)
                .orElseThrow(() -> Problem.notFound(Thing.WARNING, id.toString()));
    }

    /** That somebody has seen it. It goes on until its cause has gone. */
    @POST
    @Needs(Right.ACKNOWLEDGE_WARNINGS)
    @Path("{id}/acknowledgement")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = WarningView.class, responseCode = "200")
    public Response acknowledge(
            @RestPath UUID id,
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @Nullable @Valid AcknowledgementWire wire) {
        Once.Answer answer = once.write(
                OnceKey.optional(key),
                "POST /api/warnings/" + id + "/acknowledgement",
                wire == null ? "" : wire,
                200,
                () -> WarningView.of(acknowledge.acknowledge(
                        id, caller.who().name(), wire == null ? null : wire.text(), time.instant())));
        acknowledge.announce(id);
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private List<Site> sites(@Nullable String site, @Nullable String house) {
        if (site != null) {
            return List.of(places.site(site).orElseThrow(() -> Problem.notFound(Thing.SITE, site)));
        }
        if (house != null) {
            return List.of(places.house(house)
                    .flatMap(found -> places.site(found.site()))
                    .orElseThrow(() -> Problem.notFound(Thing.HOUSE, house)));
        }
        return places.sites();
    }

    private static Instant instant(String field, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException notATime) {
            throw Problem.malformed(field, Fault.NOT_AN_INSTANT);
        }
    }
}
