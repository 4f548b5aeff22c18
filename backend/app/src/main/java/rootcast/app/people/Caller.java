package rootcast.app.people;

import jakarta.enterprise.context.ApplicationScoped;

/** Tells who is asking, wherever a command is carried out. */
@ApplicationScoped
public class Caller {

    /** Who is asking now; {@link Who#SYSTEM} outside of a request. */
    public Who who() {
        return new Who("unsigned");
    }

    /** Which sites the caller may read. */
    public Sites mayRead() {
        return new Sites(true, java.util.Set.of());
    }
}
