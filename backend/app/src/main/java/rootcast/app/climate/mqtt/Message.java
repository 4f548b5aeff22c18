package rootcast.app.climate.mqtt;

import java.time.Instant;

/**
 * A message that came, and the way to tell the broker that it is kept.
 *
 * @param retained    it is the topic's last message, kept by the broker, and nobody knows how old
 * @param number      under which the broker gave it; negative if it wants no acknowledgement
 * @param again       the broker says that it gave it before
 * @param acknowledge tells the broker that it is kept
 */
record Message(
        String topic,
        String text,
        boolean retained,
        int number,
        boolean again,
        Instant arrivedAt,
        Runnable acknowledge) {

    String shown() {
        return topic + ": " + text;
    }
}
