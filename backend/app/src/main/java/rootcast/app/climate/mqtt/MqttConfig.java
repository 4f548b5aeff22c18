package rootcast.app.climate.mqtt;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.util.Optional;

/** Readings by MQTT; off unless a host is set. */
@ConfigMapping(prefix = "rootcast.mqtt")
public interface MqttConfig {

    /** Broker to take readings from. Without one, none are taken by MQTT. */
    Optional<String> host();

    /** Port of the broker. */
    @WithDefault("1883")
    int port();

    /** Whether the connection is encrypted; the broker's certificate must be trusted by this machine. */
    @WithDefault("false")
    boolean tls();

    Optional<String> username();

    Optional<String> password();

    /** What is subscribed to. All, so that a topic nobody has mapped is seen and counted; narrow it on a busy broker. */
    @WithDefault("#")
    String topics();

    /**
     * Name of the session at the broker, which keeps what comes while nobody listens. It is the business's, whichever node
     * listens: the same on all of them. {@code rootcast-} and a code drawn with the database unless set.
     */
    Optional<String> clientId();
}
