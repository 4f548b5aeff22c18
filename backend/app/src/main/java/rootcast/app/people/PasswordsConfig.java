package rootcast.app.people;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** How passwords are kept. */
@ConfigMapping(prefix = "rootcast.passwords")
interface PasswordsConfig {

    /** Two to this power are the rounds of bcrypt: with 11 about a tenth of a second, see docs/measurements.md. */
    @WithDefault("11")
    int cost();
}
