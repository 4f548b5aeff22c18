package rootcast.app.once;

import java.time.Instant;

/**
 * That somebody changed the set-up.
 *
 * @param id   grows with time; what a page of the list ends at
 * @param at   when it was recorded
 * @param who  name of the person, or of the key
 * @param what method and path, such as {@code PUT /api/sites/NORTH}; at most 200 characters
 */
public record SetupChange(long id, Instant at, String who, String what) {}
