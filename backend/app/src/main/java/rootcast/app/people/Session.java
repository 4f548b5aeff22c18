package rootcast.app.people;

import java.time.Instant;
import java.util.UUID;

/**
 * A sign-in of a person on a device.
 *
 * @param secretHash SHA-256 of what the cookie holds
 * @param person     under which the person is found
 * @param device     what the browser says of itself, cut
 */
public record Session(UUID id, String secretHash, String person, Instant begunAt, Instant lastSeenAt, String device) {}
