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
     * Whether several nodes, or several connections of this one, share the messages. Off for a single node: a plain
     * subscription outlives a restart of every broker that was tried, a shared one did not on Mosquitto 2.0.11.
     */
    @WithDefault("false")
    boolean shared();

    /** Nodes of this group share the messages among them. */
    @WithDefault("rootcast")
    String group();

    /** Connections of this node, if messages are shared and the broker can do it. */
    @WithDefault("4")
    int connections();

    /**
     * Name of this node's session at the broker, which keeps what comes while the node is away: the same at every start
     * and another one on every node. The HTTP port is added to it.
     */
    @WithDefault("rootcast")
    String clientId();
}
