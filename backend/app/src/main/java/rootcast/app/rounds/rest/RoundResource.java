package rootcast.app.rounds.rest;

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
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.HashSet;
import java.util.List;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.rounds.RecordCare;
import rootcast.app.rounds.RecordedCare;
import rootcast.app.rounds.SiteCare;
import rootcast.app.rounds.store.WalkingOrder;
import rootcast.app.site.store.Places;
import rootcast.rounds.Care;
import rootcast.rounds.Task;
import rootcast.saying.Fault;
import rootcast.site.Site;

/** The daily round of a site. */
@Path("/api/rounds")
public class RoundResource {

    @Inject
    SetupLog log;

    @Inject
    Caller caller;

    @Inject
    Rights rights;

    @Inject
    SiteCare siteCare;

    @Inject
    RecordCare recordCare;

    @Inject
    RoundViews views;

    @Inject
    Places places;

    @Inject
    WalkingOrder walkingOrder;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    /** What is due by the end of a day (today if left out) and what was closed on it, in walking order. */
    @GET
    @Needs(Right.READ)
    public List<RoundItemView> items(
            @RestQuery @Nullable String site, @RestQuery @Nullable String on, @RestQuery @Nullable String house) {
        Site asked = readable(site);
        Instant now = time.instant();
        SiteCare.At at = siteCare.at(asked, now);
        return views.items(at, siteCare.round(at, on == null ? asked.dayOf(now) : day(on))).stream()
                .filter(item -> house == null || item.house().equals(house))
                .toList();
    }

    /** The houses in walking order, with what keeps people out and what clashes in them. */
    @GET
    @Needs(Right.READ)
    @Path("houses")
    public List<RoundItemView.HouseOnTheWalk> houses(@RestQuery @Nullable String site) {
        return views.houses(siteCare.at(readable(site), time.instant()));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("houses")
    public List<RoundItemView.HouseOnTheWalk> walk(
            @RestQuery @Nullable String site, @NotNull @Valid WalkingOrderWire wire) {
        Site asked = site(site);
        rights.at(asked.code(), Right.SET_UP);
        List<String> all = siteCare.housesOf(asked);
        if (!all.containsAll(wire.houses())
                || new HashSet<>(wire.houses()).size() < wire.houses().size()) {
            throw Problem.notAllowed("houses", wire.houses(), Fault.NOT_THIS_SITES_HOUSES, all);
        }
        once.write(OnceKey.none(), "PUT /api/rounds/houses?site=" + asked.code(), wire, 200, () -> {
            log.add("PUT /api/rounds/houses?site=" + asked.code());
            walkingOrder.place(wire.houses(), all);
            return null;
        });
        return houses(site);
    }

    @POST
    @Needs(Right.RECORD)
    @Path("{id}/done")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = RoundItemView.Closed.class, responseCode = "200")
    public Response done(
            @RestPath String id, @HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid DoneWire wire) {
        return write(
                key,
                id,
                "done",
                wire,
                () -> closed(recordCare.done(
                        id,
                        wire.happenedAt().toInstant(),
                        wire.observed(task(id)),
                        Boolean.FALSE.equals(wire.confirmed()),
                        caller.who().name(),
                        time.instant())));
    }

    @POST
    @Needs(Right.RECORD)
    @Path("{id}/skipped")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = RoundItemView.Closed.class, responseCode = "200")
    public Response skipped(
            @RestPath String id,
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @NotNull @Valid SkippedWire wire) {
        return write(key, id, "skipped", wire, () -> {
            Instant now = time.instant();
            Instant at = wire.happenedAt() == null ? now : wire.happenedAt().toInstant();
            return closed(recordCare.skipped(
                    id, at, wire.reason().strip(), caller.who().name(), now));
        });
    }

    @POST
    @Needs(Right.RECORD)
    @Path("{id}/undo")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = RoundItemView.Closed.class, responseCode = "200")
    public Response undo(
            @RestPath String id, @HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid UndoWire wire) {
        return write(key, id, "undo", wire, () -> {
            RecordedCare before =
                    recordCare.undo(id, wire.reason().strip(), caller.who().name(), time.instant());
            Site site = places.site(before.site()).orElseThrow();
            LocalDate today = site.dayOf(time.instant());
            return closed(before, before.care().dueOn().isBefore(today) ? "carried-over" : "due");
        });
    }

    private Response write(@Nullable String key, String id, String verb, Object wire, Supplier<?> work) {
        Once.Answer answer = once.write(OnceKey.optional(key), "POST /api/rounds/" + id + "/" + verb, wire, 200, work);
        return Response.status(answer.status())
                .type(MediaType.APPLICATION_JSON)
                .entity(answer.body())
                .build();
    }

    private static RoundItemView.Closed closed(RecordedCare recorded) {
        return closed(recorded, recorded.care().done() ? "done" : "skipped");
    }

    private static RoundItemView.Closed closed(RecordedCare recorded, String state) {
        Care care = recorded.care();
        return new RoundItemView.Closed(
                care.item(),
                care.house(),
                care.batch(),
                care.task().wireName(),
                care.dueOn(),
                state,
                care.at(),
                recorded.entries());
    }

    private static Task task(String id) {
        int dot = id.indexOf('.');
        return Task.ofWireName(dot < 0 ? id : id.substring(0, dot))
                .orElseThrow(() -> Problem.notFound(Thing.ROUND_ITEM, id));
    }

    private Site site(@Nullable String code) {
        if (code == null) {
            throw Problem.malformed("site", Fault.MISSING);
        }
        return places.site(code).orElseThrow(() -> Problem.notFound(Thing.SITE, code));
    }

    private Site readable(@Nullable String code) {
        Site asked = site(code);
        rights.at(asked.code(), Right.READ);
        return asked;
    }

    private static LocalDate day(String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException notADay) {
            throw Problem.malformed("on", Fault.NOT_A_DATE);
        }
    }
}
