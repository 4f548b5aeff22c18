package rootcast.app.climate.mqtt;

import java.time.Instant;

/**
 * A message that was read.
 *
 * @param at         when it was measured; when it came if the message does not say
 * @param ownTime    whether the message says when
 */
record Stamped(Message message, double value, Instant at, boolean ownTime) {}
