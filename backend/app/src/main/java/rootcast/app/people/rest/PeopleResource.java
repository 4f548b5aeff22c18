package rootcast.app.people.rest;

import io.vertx.core.http.HttpServerRequest;
import jakarta.inject.Inject;
import jakarta.validation.Valid;
import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponseSchema;
import org.jboss.resteasy.reactive.RestPath;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Person;
import rootcast.app.people.Right;
import rootcast.app.people.Staff;

/** People and what they may do. */
@Path("/api/people")
@Needs(Right.PEOPLE)
public class PeopleResource {

    @Inject
    Staff staff;

    @Inject
    Caller caller;

    @Context
    HttpServerRequest request;

    record NewPersonWire(
            @NotNull @Size(max = 64) String name,
            @NotBlank @Size(max = 120) String displayName,
            @NotNull @Size(max = 1_000) String password,
            @NotNull @Size(max = 100) List<@NotNull @Valid GrantWire> grants) {
        @Override
        public String toString() {
            return "NewPersonWire[" + name + "]";
        }
    }

    /** @param active stays as it is if left out */
    record PersonChangeWire(
            @NotBlank @Size(max = 120) String displayName,
            @NotNull @Size(max = 100) List<@NotNull @Valid GrantWire> grants,
            @Nullable Boolean active) {}

    record NewPasswordWire(@NotNull @Size(max = 1_000) String password) {
        @Override
        public String toString() {
            return "NewPasswordWire[]";
        }
    }

    /** @param signsInWith password, directory or demo */
    record PersonWire(
            String name,
            String displayName,
            boolean active,
            String signsInWith,
            Instant createdAt,
            List<GrantWire> grants) {
        static PersonWire of(Person person) {
            return new PersonWire(
                    person.name(),
                    person.displayName(),
                    person.active(),
                    person.origin().name().toLowerCase(Locale.ROOT),
                    person.createdAt(),
                    GrantWire.of(person.grants()));
        }
    }

    @GET
    public List<PersonWire> all() {
        return staff.all().stream().map(PersonWire::of).toList();
    }

    @POST
    @Produces(MediaType.APPLICATION_JSON)
    @APIResponseSchema(value = PersonWire.class, responseCode = "201", responseDescription = "added")
    public Response add(@NotNull @Valid NewPersonWire wire) {
        Person person = staff.add(
                wire.name().strip(),
                wire.displayName().strip(),
                wire.password(),
                GrantWire.grants(wire.grants()),
                by());
        return Response.created(URI.create("/api/people"))
                .type(MediaType.APPLICATION_JSON)
                .entity(PersonWire.of(person))
                .build();
    }

    /** The last active owner stays one. */
    @PUT
    @Path("{name}")
    public PersonWire change(@RestPath String name, @NotNull @Valid PersonChangeWire wire) {
        return PersonWire.of(
                staff.change(name, wire.displayName().strip(), GrantWire.grants(wire.grants()), wire.active(), by()));
    }

    /** Sets another password and ends the person's sessions. */
    @POST
    @Path("{name}/password")
    public void setPassword(@RestPath String name, @NotNull @Valid NewPasswordWire wire) {
        staff.setPassword(name, wire.password(), by());
    }

    @DELETE
    @Path("{name}/sessions")
    public void endSessions(@RestPath String name) {
        staff.endSessions(name, by());
    }

    private Staff.By by() {
        return new Staff.By(caller.who().name(), SessionCookie.address(request));
    }
}
