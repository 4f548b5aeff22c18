package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;

import io.smallrye.config.SmallRyeConfigBuilder;
import org.junit.jupiter.api.Test;

/** How slow a guess is. */
class PasswordsTest {

    /** The least that OWASP's Password Storage Cheat Sheet names for bcrypt. */
    private static final int LEAST = 10;

    @Test
    void aHashHasTheRoundsThatAreSet() {
        String hash = new Passwords(() -> 5).hash("long enough a word");

        assertThat(hash).startsWith("$2a$05$");
        assertThat(new Passwords(() -> 6).matches("long enough a word", hash)).isTrue();
        assertThat(new Passwords(() -> 6).matches("long enough a work", hash)).isFalse();
    }

    /** The tests of the application set fewer, so what it does unasked is looked at here. */
    @Test
    void unaskedThereAreEnough() {
        PasswordsConfig unasked = new SmallRyeConfigBuilder()
                .withMapping(PasswordsConfig.class)
                .build()
                .getConfigMapping(PasswordsConfig.class);

        assertThat(unasked.cost()).isGreaterThanOrEqualTo(LEAST);
    }
}
