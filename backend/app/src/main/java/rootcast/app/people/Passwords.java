package rootcast.app.people;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;

/** What a password must be, and its bcrypt hash. */
@ApplicationScoped
class Passwords {

    private static final int LEAST_CHARACTERS = 10;

    /** bcrypt reads no further; longer ones would be cut without a word. */
    private static final int MOST_BYTES = 72;

    private final int cost;

    /** Of nobody: looked at for names that do not exist, so that an answer takes as long for them. */
    private final String nobodys;

    /** Hashing is slow on purpose; more at once would take the processors from everybody who is signed in. */
    private final Semaphore atOnce = new Semaphore(2, true);

    Passwords(PasswordsConfig config) {
        this.cost = config.cost();
        this.nobodys = BcryptUtil.bcryptHash("no password of anybody", cost);
    }

    void check(String field, String password, String name) {
        if (password.codePointCount(0, password.length()) < LEAST_CHARACTERS) {
            throw refused(field, "must have at least " + LEAST_CHARACTERS + " characters");
        }
        int bytes = password.getBytes(StandardCharsets.UTF_8).length;
        if (bytes > MOST_BYTES) {
            throw refused(field, "has " + bytes + " bytes in UTF-8; it may have at most " + MOST_BYTES);
        }
        if (password.strip().toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT))) {
            throw refused(field, "must not be the name");
        }
    }

    String hash(String password) {
        return inTurn(() -> BcryptUtil.bcryptHash(password, cost));
    }

    /** @param hash null if there is nobody of that name or nobody with a password */
    boolean matches(String password, @Nullable String hash) {
        boolean fits = password.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
        boolean same = inTurn(() -> BcryptUtil.matches(fits ? password : "", hash == null ? nobodys : hash));
        return same && fits && hash != null;
    }

    private <T> T inTurn(Supplier<T> slow) {
        atOnce.acquireUninterruptibly();
        try {
            return slow.get();
        } finally {
            atOnce.release();
        }
    }

    /** Without what was asked: a password stands in no answer and no log. */
    private static Problem refused(String field, String message) {
        return Problem.notAllowed(field, message);
    }
}
