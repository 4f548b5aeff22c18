package rootcast.app.demo.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotNull;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import java.util.List;
import rootcast.app.people.Grant;
import rootcast.app.people.Needs;
import rootcast.app.people.Person;
import rootcast.app.people.Right;
import rootcast.app.people.Role;
import rootcast.app.people.SignIn;
import rootcast.app.people.Staff;
import rootcast.app.people.rest.SessionCookie;

/** The demo's doors: one click, no password. Anywhere else there is no such address. */
@Path("/api/session/door")
public class DoorResource {

    @Inject
    Staff staff;

    @Inject
    SignIn signIn;

    @Inject
    SessionCookie cookie;

    @Context
    HttpServerRequest request;

    /** The people of the demo; they have no password that could be used. */
    enum Door {
        sales("demo-sales", "Sales of the demo", Role.SALES),
        production("demo-production", "Production of the demo", Role.PRODUCTION),
        manager("demo-manager", "Manager of the demo", Role.MANAGER);

        private final String person;
        private final String displayName;
        private final Role role;

        Door(String person, String displayName, Role role) {
            this.person = person;
            this.displayName = displayName;
            this.role = role;
        }
    }

    record DoorWire(@NotNull Door door) {}

    @POST
    @Needs(Right.OPEN)
    public Response in(@NotNull @Valid DoorWire wire) {
        Door door = wire.door();
        SignIn.From from = SessionCookie.from(request);
        Person person = staff.vouched(
                door.person, door.displayName, List.of(new Grant(door.role, null)), Person.Origin.DEMO, from.address());
        return Response.noContent()
                .cookie(cookie.holding(signIn.vouchedFor(person, from), request))
                .build();
    }
}
