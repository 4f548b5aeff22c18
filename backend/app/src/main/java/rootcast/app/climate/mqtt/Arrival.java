package rootcast.app.climate.mqtt;

import java.time.Instant;

/**
 * A message that came, and the way to tell the broker that it is kept.
 *
 * @param retained it is the topic's last message, kept by the broker, and nobody knows how old
 */
record Arrival(String topic, String text, boolean retained, Instant arrivedAt, Runnable acknowledge) {}
