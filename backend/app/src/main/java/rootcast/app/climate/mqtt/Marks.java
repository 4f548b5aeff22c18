package rootcast.app.climate.mqtt;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;

/**
 * Numbers under which the broker gave messages without a time of their own, and what those said.
 *
 * <p>MQTT 3.1.1 [MQTT-4.4.0-1] has a broker send what was not acknowledged under its first number, and frees a number
 * only for what was: so the last message of a number is the one that a repeat can be of.
 */
final class Marks {

    private final Map<String, String> saidByNumber = new HashMap<>();

    static String of(Message message) {
        return message.number() + ":" + said(message);
    }

    private static String said(Message message) {
        return Integer.toHexString(
                31 * message.topic().hashCode() + message.text().hashCode());
    }

    void add(Collection<String> marks) {
        for (String mark : marks) {
            int colon = mark.indexOf(':');
            saidByNumber.put(mark.substring(0, colon), mark.substring(colon + 1));
        }
    }

    boolean has(Message message) {
        return said(message).equals(saidByNumber.get(Integer.toString(message.number())));
    }

    void clear() {
        saidByNumber.clear();
    }
}
