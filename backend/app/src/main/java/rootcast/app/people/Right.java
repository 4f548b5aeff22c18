package rootcast.app.people;

/** What an endpoint takes. Which role holds which stands in {@link Role}. */
public enum Right {
    /** Nobody need be signed in. */
    OPEN,
    /** Anybody who is signed in, or a key: what concerns only themselves. */
    SIGNED_IN,
    /** Board, batches, climate, rounds, warnings, track record and the lists of the set-up. */
    READ,
    /** Entries, sticking, rounds and treatments. */
    RECORD,
    POST_READINGS,
    ACKNOWLEDGE_WARNINGS,
    READ_ORDERS,
    WRITE_ORDERS,
    /** Sites, houses, crops, profiles, recipes, sensors, set-point plans, CSV import, overrides and what-if. */
    SET_UP,
    /** People, keys and the audit list. */
    PEOPLE
}
