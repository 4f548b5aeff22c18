package rootcast.app.people;

import io.quarkus.elytron.security.common.BcryptUtil;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

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
            throw Problem.notAllowed(field, Fault.TOO_SHORT, LEAST_CHARACTERS);
        }
        int bytes = password.getBytes(StandardCharsets.UTF_8).length;
        if (bytes > MOST_BYTES) {
            throw Problem.notAllowed(field, Fault.TOO_MANY_BYTES, MOST_BYTES);
        }
        if (password.strip().toLowerCase(Locale.ROOT).equals(name.toLowerCase(Locale.ROOT))) {
            throw Problem.notAllowed(field, Fault.SAME_AS_NAME);
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
}
