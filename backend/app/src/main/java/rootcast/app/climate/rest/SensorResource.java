package rootcast.app.climate.rest;

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
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.store.Readings;
import rootcast.app.climate.store.Sensors;
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
import rootcast.climate.Sensor;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;
import rootcast.site.House;

/** The sensor map: which topic is which sensor, where it hangs, and what its numbers mean. */
@Path("/api/sensors")
public class SensorResource {

    private static final Duration USUAL = Duration.ofDays(1);
    private static final int MOST = 20_000;

    @Inject
    Caller caller;

    @Inject
    Rights rights;

    @Inject
    Sensors sensors;

    @Inject
    Readings readings;

    @Inject
    InstantSource time;

    @Inject
    Places places;

    @Inject
    WriteSetup setup;

    @GET
    @Needs(Right.READ)
    public List<SensorWire> all() {
        Sites theirs = caller.mayRead();
        Map<String, String> sites = places.houses().stream().collect(Collectors.toMap(House::code, House::site));
        return sensors.all().stream()
                .filter(each -> theirs.includes(sites.get(each.house())))
                .map(SensorWire::of)
                .toList();
    }

    @GET
    @Needs(Right.READ)
    @Path("{code}")
    public SensorWire one(@RestPath String code) {
        return SensorWire.of(readable(code));
    }

    /** @param sent as it came, in {@code unit}; {@code value} is in the quantity's unit, with the offset */
    record RawWire(Instant at, double value, double sent, String unit) {}

    /** @param more whether there are more; ask again from the last one */
    record RawListWire(String sensor, String quantity, List<RawWire> readings, boolean more) {}

    /** Raw readings while they are kept: of the last day unless asked otherwise. */
    @GET
    @Needs(Right.READ)
    @Path("{code}/readings")
    public RawListWire readings(
            @RestPath String code, @RestQuery @Nullable String from, @RestQuery @Nullable String to) {
        Sensor sensor = readable(code);
        Instant until = to == null ? time.instant().plusSeconds(1) : HouseClimateResource.instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : HouseClimateResource.instant("from", from);
        List<HouseReading> found = readings.ofSensor(code, since, until, MOST + 1);
        return new RawListWire(
                code,
                sensor.quantity().wireName(),
                found.stream()
                        .limit(MOST)
                        .map(each -> new RawWire(each.at(), each.value(), each.sent(), each.sentUnit()))
                        .toList(),
                found.size() > MOST);
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = SensorWire.class, responseCode = "201")
    @Needs(Right.SET_UP)
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid SensorWire wire) {
        mayMap(wire);
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Needs(Right.SET_UP)
    @Path("{code}")
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = SensorWire.class, responseCode = "200")
    public Response change(@RestPath String code, @NotNull @Valid SensorWire wire) {
        mayMap(wire);
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    /** Where the sensor is to hang and, if it hangs somewhere, there too. */
    private void mayMap(SensorWire wire) {
        places.house(wire.house()).ifPresent(house -> rights.at(house.site(), Right.SET_UP));
        sensors.sensor(wire.code()).ifPresent(before -> rights.at(siteOf(before.house()), Right.SET_UP));
    }

    private Sensor readable(String code) {
        return sensors.sensor(code)
                .filter(each -> caller.mayRead().includes(siteOf(each.house())))
                .orElseThrow(() -> Problem.notFound(Thing.SENSOR, code));
    }

    private String siteOf(String house) {
        return places.house(house).orElseThrow().site();
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item(Thing.SENSOR, "sensors", code);
    }

    private BooleanSupplier exists(SensorWire wire) {
        return () -> sensors.sensor(wire.code()).isPresent();
    }

    private Function<FactPosition, Object> save(SensorWire wire) {
        return position -> {
            Sensor sensor = wire.sensor();
            if (places.house(sensor.house()).isEmpty()) {
                throw Problem.unknownCode("house", sensor.house());
            }
            String topic = sensor.topic();
            if (topic != null) {
                sensors.ofTopic(topic)
                        .filter(other -> !other.code().equals(sensor.code()))
                        .ifPresent(other -> {
                            throw Problem.notAllowed("topic", topic, Fault.TAKEN_BY, other.code());
                        });
            }
            sensors.save(sensor, position);
            return SensorWire.of(sensor);
        };
    }
}
