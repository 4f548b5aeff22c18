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

    /** Nodes of this group share the messages among them. */
    @WithDefault("rootcast")
    String group();

    /** Connections of this node, where the broker shares messages among several. */
    @WithDefault("4")
    int connections();

    /**
     * Name of this node's session at the broker, which keeps what comes while the node is away: the same at every start
     * and another one on every node. The HTTP port is added to it.
     */
    @WithDefault("rootcast")
    String clientId();
}
