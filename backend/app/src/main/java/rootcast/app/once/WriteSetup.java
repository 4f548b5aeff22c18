package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.function.BooleanSupplier;
import java.util.function.Function;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;

/** Creating and changing the things that have a code: sites, houses, tray formats, crops, varieties. */
@ApplicationScoped
public class WriteSetup {

    @Inject
    SetupLog log;

    @Inject
    Once once;

    @Inject
    FactHead head;

    /**
     * @param kind  what it is
     * @param place path of the list
     */
    public record Item(Thing kind, String place, String code) {
        String path() {
            return "/api/" + place + "/" + code;
        }
    }

    /** @param save stores it under the position it is given and returns what a GET would now answer */
    public Response create(
            OnceKey key, Item item, Object body, BooleanSupplier exists, Function<FactPosition, Object> save) {
        Once.Answer answer = once.write(key, "POST /api/" + item.place(), body, 201, () -> {
            if (exists.getAsBoolean()) {
                throw Problem.codeTaken(item.kind(), item.code());
            }
            log.add("POST " + item.path());
            return save.apply(head.nextForSetup());
        });
        return response(answer).location(URI.create(item.path())).build();
    }

    /** Adds one of many that have no code of their own to the list at {@code path}. */
    public Response add(OnceKey key, String path, Object body, Function<FactPosition, Object> save) {
        return response(once.write(key, "POST " + path, body, 201, () -> {
                    log.add("POST " + path);
                    return save.apply(head.nextForSetup());
                }))
                .build();
    }

    /** The same content as for creating; its code must be the one addressed. */
    public Response change(
            Item item, String codeInBody, Object body, BooleanSupplier exists, Function<FactPosition, Object> save) {
        if (!codeInBody.equals(item.code())) {
            throw Problem.notAllowed("code", codeInBody, Fault.FIXED, item.code());
        }
        Once.Answer answer = once.write(OnceKey.none(), "PUT " + item.path(), body, 200, () -> {
            if (!exists.getAsBoolean()) {
                throw Problem.notFound(item.kind(), item.code());
            }
            log.add("PUT " + item.path());
            return save.apply(head.nextForSetup());
        });
        return response(answer).build();
    }

    private static Response.ResponseBuilder response(Once.Answer answer) {
        return Response.status(answer.status()).type(MediaType.APPLICATION_JSON).entity(answer.body());
    }
}
