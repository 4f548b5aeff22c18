package rootcast.app.people;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.Optional;

/** Settings of sign-in. */
@ConfigMapping(prefix = "rootcast.people")
public interface PeopleConfig {

    /** A session ends when nobody has used it for so long: a shift with its break. */
    @WithDefault("14h")
    Duration idle();

    /** A session ends so long after its begin, however much it is used. */
    @WithDefault("30d")
    Duration longest();

    /** How long what was looked up of a session or key is believed; an ended one stops on every node within that. */
    @WithDefault("2s")
    Duration believed();

    /** After so long a line of the audit list is purged. */
    @WithDefault("180d")
    Duration auditKept();

    /**
     * The address that browsers see, such as {@code https://liners.example}, where a proxy shows another one to us.
     * Requests that change something must then come from exactly there.
     */
    Optional<String> publicAddress();

    /** Claim of the directory's token that holds grants such as {@code MANAGER} or {@code PRODUCTION@NORTH}. */
    @WithDefault("groups")
    String directoryClaim();
}
