package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.Sensors;
import rootcast.app.once.OnceKey;
import rootcast.app.once.WriteSetup;
import rootcast.app.problem.Problem;
import rootcast.app.site.store.Places;
import rootcast.climate.Sensor;
import rootcast.ledger.LedgerPosition;

/** The sensor map: which topic is which sensor, where it hangs, and what its numbers mean. */
@Path("/api/sensors")
public class SensorResource {

    @Inject
    Sensors sensors;

    @Inject
    Places places;

    @Inject
    WriteSetup setup;

    @GET
    public List<SensorWire> all() {
        return sensors.all().stream().map(SensorWire::of).toList();
    }

    @GET
    @Path("{code}")
    public SensorWire one(@RestPath String code) {
        return sensors.sensor(code).map(SensorWire::of).orElseThrow(() -> Problem.notFound("sensor", code));
    }

    @POST
    public Response create(@HeaderParam("Idempotency-Key") @Nullable String key, @NotNull @Valid SensorWire wire) {
        return setup.create(OnceKey.optional(key), item(wire.code()), wire, exists(wire), save(wire));
    }

    @PUT
    @Path("{code}")
    public Response change(@RestPath String code, @NotNull @Valid SensorWire wire) {
        return setup.change(item(code), wire.code(), wire, exists(wire), save(wire));
    }

    private static WriteSetup.Item item(String code) {
        return new WriteSetup.Item("sensor", "sensors", code);
    }

    private BooleanSupplier exists(SensorWire wire) {
        return () -> sensors.sensor(wire.code()).isPresent();
    }

    private Function<LedgerPosition, Object> save(SensorWire wire) {
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
                            throw Problem.notAllowed(
                                    "topic", topic, "is the topic of sensor '" + other.code() + "' already");
                        });
            }
            sensors.save(sensor, position);
            return SensorWire.of(sensor);
        };
    }
}
