package rootcast.app.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.warnings.Warning;
import rootcast.warnings.WarningKind;

/** Against a receiver of its own on the loopback. */
class WebhookTest {

    private static final Instant SINCE = Instant.parse("2026-03-02T10:00:00Z");

    private final BlockingQueue<String> bodies = new LinkedBlockingQueue<>();
    private final BlockingQueue<String> keys = new LinkedBlockingQueue<>();
    private HttpServer receiver;
    private int answer = 204;

    @BeforeEach
    void listen() throws IOException {
        receiver = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        receiver.createContext("/hook", exchange -> {
            bodies.add(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
            keys.add(exchange.getRequestHeaders().getFirst("Idempotency-Key"));
            exchange.sendResponseHeaders(answer, -1);
            exchange.close();
        });
        receiver.start();
    }

    @AfterEach
    void stop() {
        receiver.stop(0);
    }

    @Test
    void postsTheWarningUnderItsId() throws Exception {
        WrittenWarning written = written();

        webhook().send(written);

        JsonNode body = new ObjectMapper().readTree(bodies.take());
        assertThat(body.get("kind").asText()).isEqualTo("medium-cold");
        assertThat(body.get("house").asText()).isEqualTo("H1");
        assertThat(body.get("text").asText()).isEqualTo("House H1: the medium is too cold: 18.50 °C, limit 20.00.");
        assertThat(keys.take()).isEqualTo(written.id().toString());
    }

    @Test
    void anAnswerOtherThanTakenIsAFailure() {
        answer = 503;

        assertThatThrownBy(() -> webhook().send(written()))
                .isInstanceOf(IOException.class)
                .hasMessageContaining("503");
    }

    @Test
    void isOffWithoutAnAddress() {
        Webhook off = new Webhook();
        off.config = config(Optional.empty());

        assertThat(off.isOn()).isFalse();
        assertThat(webhook().isOn()).isTrue();
    }

    @Test
    void pausesGrowToAnHour() {
        assertThat(List.of(
                        SendWarnings.pauseAfter(1),
                        SendWarnings.pauseAfter(2),
                        SendWarnings.pauseAfter(6),
                        SendWarnings.pauseAfter(7),
                        SendWarnings.pauseAfter(400)))
                .containsExactly(
                        Duration.ofMinutes(1),
                        Duration.ofMinutes(2),
                        Duration.ofMinutes(32),
                        Duration.ofHours(1),
                        Duration.ofHours(1));
    }

    private Webhook webhook() {
        Webhook webhook = new Webhook();
        webhook.config = config(Optional.of(
                URI.create("http://127.0.0.1:" + receiver.getAddress().getPort() + "/hook")));
        webhook.json = new ObjectMapper().registerModule(new JavaTimeModule());
        return webhook;
    }

    private static WarningsConfig config(Optional<URI> address) {
        return new WarningsConfig() {
            @Override
            public Optional<List<String>> mailTo() {
                return Optional.empty();
            }

            @Override
            public Letter.Language mailLanguage() {
                return Letter.Language.EN;
            }

            @Override
            public boolean mailFahrenheit() {
                return false;
            }

            @Override
            public Optional<URI> webhook() {
                return address;
            }

            @Override
            public LocalTime quietFrom() {
                return LocalTime.MIDNIGHT;
            }

            @Override
            public LocalTime quietUntil() {
                return LocalTime.MIDNIGHT;
            }

            @Override
            public String watchEvery() {
                return "off";
            }

            @Override
            public String sendEvery() {
                return "off";
            }
        };
    }

    private static WrittenWarning written() {
        Warning warning = new Warning(
                WarningKind.MEDIUM_COLD,
                "H1",
                null,
                null,
                SINCE,
                SINCE.plus(Duration.ofHours(3)),
                null,
                18.5,
                20.0,
                "Cel",
                List.of("B1"));
        return new WrittenWarning(new UUID(0, 5), "S", warning, SINCE, null, null, null, List.of());
    }
}
