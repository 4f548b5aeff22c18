package rootcast.app.warnings;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.net.URI;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;

/** How people are told of warnings outside the screens. Off unless an address is given. */
@ConfigMapping(prefix = "rootcast.warnings")
public interface WarningsConfig {

    /** Addresses that get each warning by e-mail, parted by commas; the mail server is set by quarkus.mailer.*. */
    Optional<List<String>> mailTo();

    /** Words of the e-mails: {@code en} or {@code es}. */
    @WithDefault("en")
    Letter.Language mailLanguage();

    /** Whether e-mails tell temperatures in °F and light in foot-candles; in °C and µmol/m²/s otherwise. */
    @WithDefault("false")
    boolean mailFahrenheit();

    /** Address that each warning is posted to as JSON. */
    Optional<URI> webhook();

    /** Start of the hours in which nothing is sent, by the site's clock; equal to the end for none. */
    @WithDefault("00:00")
    LocalTime quietFrom();

    /** End of the hours in which nothing is sent; what came up in them is sent then. */
    @WithDefault("00:00")
    LocalTime quietUntil();

    /** How often it is seen whether an hour has ended and its houses are to be looked at; {@code off} for only when somebody asks. */
    @WithDefault("60s")
    String watchEvery();

    /** How often what is pending outside is sent. */
    @WithDefault("30s")
    String sendEvery();
}
