package rootcast.app.site.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
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
import java.util.List;
import java.util.Objects;
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
import rootcast.app.site.HousePlans;
import rootcast.app.site.PlannedSetpoint;
import rootcast.app.site.StatedMove;
import rootcast.app.site.store.Places;
import rootcast.facts.FactPosition;
import rootcast.outlook.UsualMove;
import rootcast.saying.Fault;
import rootcast.site.House;

/** Houses: the climate compartments of a site. */
@Path("/api/houses")
public class HouseResource {

    @Inject
    Caller caller;

    @Inject
    Rights rights;

    @Inject
    Places places;

    @Inject
    WriteSetup setup;

    @Inject
    InstantSource time;

    @GET
    @Needs(Right.READ)
    public List<HouseWire> all() {
        Sites theirs = caller.mayRead();
        HousePlans plans = places.plans();
        return places.houses().stream()
                .filter(each -> theirs.includes(each.site()))
                .map(each -> HouseWire.of(each, plans.moveFrom(each.code())))
                .toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public HouseWire one(@RestPath String code) {
        return places.house(code)
                .filter(each -> caller.mayRead().includes(each.site()))
                .map(each -> HouseWire.of(each, places.plans().moveFrom(code)))
                .orElseThrow(() -> Problem.notFound(Thing.HOUSE, code));
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = HouseWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid HouseWire wire) {
        rights.at(wire.site(), Right.SET_UP);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = HouseWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid HouseWire wire) {
        rights.at(wire.site(), Right.SET_UP);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    /**
     * @param mediumC °C, 0 to 40; null if the heat goes off
     * @param from    when it changes or changed
     */
    public record SetpointWire(
            @Nullable @DecimalMin("0") @DecimalMax("40") Double mediumC,
            @NotNull Instant from,
            @Nullable Instant recordedAt) {}

    /** Changes of the set-point, past and planned, by when they take effect. */
    @GET
    @Needs(Right.READ)
    @Path("{code}/setpoints")
    public List<SetpointWire> setpoints(@RestPath String code) {
        one(code);
        return places.setpointsOf(code).stream()
                .map(change -> new SetpointWire(change.mediumC(), change.from(), change.recordedAt()))
                .toList();
    }

    @POST
    @Needs(Right.SET_UP)
    @Path("{code}/setpoints")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = SetpointWire.class, responseCode = "201")
    public Response plan(
            @HeaderParam("Idempotency-Key") @Nullable String key,
            @RestPath String code,
            @NotNull @Valid SetpointWire wire) {
        rights.at(one(code).site(), Right.SET_UP);
        return setup.add(OnceKey.optional(key), "/api/houses/" + code + "/setpoints", wire, position -> {
            Instant now = time.instant();
            places.add(new PlannedSetpoint(code, wire.from(), wire.mediumC(), now), position);
            return new SetpointWire(wire.mediumC(), wire.from(), now);
        });
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.HOUSE, "houses", code);
    }

    private BooleanSupplier exists(HouseWire wire) {
        return () -> places.house(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(HouseWire wire) {
        return position -> {
            House house = wire.house();
            if (places.site(house.site()).isEmpty()) {
                throw Problem.unknownCode("site", house.site());
            }
            places.house(house.code()).ifPresent(before -> staysOnItsSite(before, house));
            UsualMove move = wire.move();
            if (move != null) {
                mayBeCarriedTo(house, move.to());
            }
            places.save(house, position);
            if (!Objects.equals(move, places.plans().moveFrom(house.code()))) {
                places.add(new StatedMove(house.code(), move, time.instant()), position);
            }
            return HouseWire.of(house, move);
        };
    }

    private void mayBeCarriedTo(House from, String next) {
        House to = places.house(next).orElseThrow(() -> Problem.unknownCode("next.house", next));
        if (!to.site().equals(from.site())) {
            throw Problem.notAllowed("next.house", next, Fault.OTHER_SITE, to.site(), from.site());
        }
        if (to.code().equals(from.code())) {
            throw Problem.notAllowed("next.house", next, Fault.OTHER_THAN, from.code());
        }
    }

    /** Batches and readings of the house would otherwise change their time zone and their site after the fact. */
    private static void staysOnItsSite(House before, House after) {
        if (!before.site().equals(after.site())) {
            throw Problem.notAllowed("site", after.site(), Fault.FIXED, before.site());
        }
    }
}
