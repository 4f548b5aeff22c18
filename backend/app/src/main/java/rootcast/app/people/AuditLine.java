package rootcast.app.people;

import java.time.Instant;

/**
 * One thing that an owner may want to know of.
 *
 * @param what a short word: {@code sign-in-failed}, {@code no-right}, {@code person-changed}
 * @param from remote address
 */
public record AuditLine(Instant at, String who, String what, String detail, String from) {}
