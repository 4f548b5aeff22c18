package rootcast.app.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.mailer.Mailer;
import io.quarkus.mailer.MockMailbox;
import io.quarkus.test.junit.QuarkusTest;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.warnings.Warning;
import rootcast.warnings.WarningKind;

/** Into the framework's mailbox for tests: nothing leaves the machine. */
@QuarkusTest
class MailTest {

    private static final Instant SINCE = Instant.parse("2026-03-02T10:00:00Z");

    @Inject
    Mailer mailer;

    @Inject
    MockMailbox mailbox;

    @Test
    void everyAddressGetsTheWarningInWords() throws Exception {
        mail(Optional.of(List.of("night@nursery.test", "grower@nursery.test"))).send(written());

        var got = mailbox.getMailsSentTo("grower@nursery.test");
        assertThat(got).hasSize(1);
        assertThat(got.get(0).getSubject()).isEqualTo("Rootcast: no-feed in H1");
        assertThat(got.get(0).getText()).contains("House H1, batch B1: rooted", "2026-03-02T10:00:00Z");
        assertThat(mailbox.getMailsSentTo("night@nursery.test")).hasSize(1);
    }

    @Test
    void isOffWithoutAnAddress() {
        assertThat(mail(Optional.empty()).isOn()).isFalse();
        assertThat(mail(Optional.of(List.of())).isOn()).isFalse();
        assertThat(mail(Optional.of(List.of("night@nursery.test"))).isOn()).isTrue();
    }

    private Mail mail(Optional<List<String>> addresses) {
        Mail mail = new Mail();
        mail.mailer = mailer;
        mail.config = new WarningsConfig() {
            @Override
            public Optional<List<String>> mailTo() {
                return addresses;
            }

            @Override
            public Optional<URI> webhook() {
                return Optional.empty();
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
        return mail;
    }

    private static WrittenWarning written() {
        Warning warning = new Warning(
                WarningKind.NO_FEED,
                "H1",
                "B1",
                null,
                SINCE,
                SINCE.plus(Duration.ofHours(1)),
                null,
                null,
                null,
                "",
                List.of("B1"));
        return new WrittenWarning(new UUID(0, 6), "S", warning, SINCE, null, null, null, List.of());
    }
}
