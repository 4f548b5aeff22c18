package rootcast.app.warnings;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.mailer.Mailer;
import io.quarkus.mailer.MockMailbox;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.site.store.Places;
import rootcast.warnings.Measured;
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

    @Inject
    Places places;

    @Inject
    HandSetClock time;

    private Letter.Language language = Letter.Language.EN;
    private boolean fahrenheit;

    /** 2026-03-02T10:00Z is 05:00 in New York, whose clocks show UTC-5 until 8 March. */
    @Test
    void everyAddressGetsTheWarningInWordsAndTheSitesTime() throws Exception {
        Nursery nursery = inNewYork();
        String id = UUID.randomUUID().toString().substring(0, 8) + "@nursery.test";
        Warning warning = warning(WarningKind.NO_FEED, nursery.house, "B1", null, null, null, "");

        mail(Optional.of(List.of("night-" + id, "grower-" + id))).send(written(nursery, warning));

        var got = mailbox.getMailsSentTo("grower-" + id);
        assertThat(got).hasSize(1);
        assertThat(got.get(0).getSubject()).isEqualTo("Rootcast: Rooted, and not fed (North house)");
        assertThat(got.get(0).getText()).isEqualTo("""
                        North house: Rooted, and not fed, batch B1.

                        Since 2 Mar 2026, 05:00 (America/New_York).
                        Warning 00000000-0000-0000-0000-000000000006
                        """);
        assertThat(mailbox.getMailsSentTo("night-" + id)).hasSize(1);
    }

    /** 21.5 °C are 70.7 °F and 22 °C are 71.6 °F, by hand. */
    @Test
    void spanishAndDegreesFahrenheitAreASetting() throws Exception {
        Nursery nursery = inNewYork();
        String to = UUID.randomUUID().toString().substring(0, 8) + "@nursery.test";
        language = Letter.Language.ES;
        fahrenheit = true;
        Warning cold = warning(WarningKind.MEDIUM_COLD, nursery.house, null, null, 21.5, 22.0, "Cel");

        mail(Optional.of(List.of(to))).send(written(nursery, cold));

        var got = mailbox.getMailsSentTo(to).get(0);
        assertThat(got.getSubject()).isEqualTo("Rootcast: El sustrato está demasiado frío (North house)");
        assertThat(got.getText())
                .startsWith("North house: El sustrato está demasiado frío; peor 70.7 °F, límite 71.6 °F.\n")
                .contains("Desde 2 mar 2026, 05:00 (America/New_York).");
    }

    /** 300 µmol/m²/s of sunlight are 300 × 54 / 10.764 = 1505 fc, good for two figures. */
    @ParameterizedTest
    @CsvSource({
        "umol/m2/s, 300, false, 300 µmol/m²/s",
        "umol/m2/s, 300, true, 1500 fc",
        "{level}, 4, false, 4 of 5",
        "%, 91.4, true, 91 %",
        "mS/cm, 0.45, true, 0.45 mS/cm",
        "Cel, 21.84, false, 21.8 °C"
    })
    void valuesAreSaidAsOnTheScreens(String unit, double value, boolean inFahrenheit, String said) {
        Warning warning = warning(WarningKind.LIGHT_HIGH, "H1", null, null, value, value, unit);

        assertThat(new Letter(Letter.Language.EN, inFahrenheit, ZoneOffset.UTC)
                        .text(
                                new WrittenWarning(new UUID(0, 6), "S", warning, SINCE, null, null, null, List.of()),
                                "H1"))
                .contains("; worst %s, limit %s.".formatted(said, said));
    }

    @Test
    void everyKindAndQuantityHasWordsInBothLanguages() {
        for (Letter.Language each : Letter.Language.values()) {
            Letter letter = new Letter(each, false, ZoneOffset.UTC);
            for (WarningKind kind : WarningKind.values()) {
                for (Measured measured : Measured.values()) {
                    assertThat(letter.subject(warning(kind, "H1", null, measured, null, null, ""), "H1"))
                            .doesNotContain(kind.wireName() + " ")
                            .endsWith(" (H1)");
                }
            }
        }
    }

    @Test
    void isOffWithoutAnAddress() {
        assertThat(mail(Optional.empty()).isOn()).isFalse();
        assertThat(mail(Optional.of(List.of())).isOn()).isFalse();
        assertThat(mail(Optional.of(List.of("night@nursery.test"))).isOn()).isTrue();
    }

    private Nursery inNewYork() {
        Nursery nursery = Nursery.opened(time);
        given().contentType(ContentType.JSON)
                .body(nursery.siteBody("America/New_York"))
                .put("/api/sites/" + nursery.site)
                .then()
                .statusCode(200);
        return nursery;
    }

    private Mail mail(Optional<List<String>> addresses) {
        Mail mail = new Mail();
        mail.mailer = mailer;
        mail.places = places;
        mail.config = new WarningsConfig() {
            @Override
            public Optional<List<String>> mailTo() {
                return addresses;
            }

            @Override
            public Letter.Language mailLanguage() {
                return language;
            }

            @Override
            public boolean mailFahrenheit() {
                return fahrenheit;
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

    private static Warning warning(
            WarningKind kind,
            String house,
            @Nullable String batch,
            @Nullable Measured measured,
            @Nullable Double worst,
            @Nullable Double limit,
            String unit) {
        return new Warning(
                kind,
                house,
                batch,
                measured,
                SINCE,
                SINCE.plus(Duration.ofHours(1)),
                null,
                worst,
                limit,
                unit,
                batch == null ? List.of() : List.of(batch));
    }

    private static WrittenWarning written(Nursery nursery, Warning warning) {
        return new WrittenWarning(new UUID(0, 6), nursery.site, warning, SINCE, null, null, null, List.of());
    }
}
