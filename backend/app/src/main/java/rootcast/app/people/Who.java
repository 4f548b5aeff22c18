package rootcast.app.people;

/**
 * Who a command comes from.
 *
 * @param name a person's sign-in name, the name of a key, or {@link #SYSTEM}
 */
public record Who(String name) {

    /** What the business does by the clock, nobody asking. */
    public static final Who SYSTEM = new Who("rootcast");
}
