package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import rootcast.app.people.store.AuditLines;

/**
 * What an owner may want to know of: refusals, and changes of people, keys and passwords.
 *
 * <p>Bounded: old lines are purged, and of refusals only so many a minute are written, so that nobody can fill the disk by
 * knocking. What was left out is counted and said in the next minute.
 */
@ApplicationScoped
public class Audit {

    private static final int REFUSALS_A_MINUTE = 60;
    private static final Duration MINUTE = Duration.ofMinutes(1);
    private static final int MOST_DETAIL = 1_000;
    private static final int MOST_WHO = 120;
    private static final int MOST_FROM = 64;

    @Inject
    AuditLines lines;

    @Inject
    InstantSource time;

    private Instant minute = Instant.MIN;
    private int written;
    private int leftOut;

    /** A change; in the transaction of the change if there is one. */
    public void changed(String who, String what, String detail, String from) {
        lines.add(line(who, what, detail, from));
    }

    /** A refusal, in a transaction of its own: that of what was refused is rolled back. */
    public void refused(String who, String what, String detail, String from) {
        int untold = mayWrite();
        if (untold < 0) {
            return;
        }
        QuarkusTransaction.requiringNew().run(() -> {
            if (untold > 0) {
                lines.add(line("rootcast", "not-listed", untold + " more refusals were not listed", ""));
            }
            lines.add(line(who, what, detail, from));
        });
    }

    public List<AuditLine> before(Instant exclusive, int most) {
        return lines.before(exclusive, most);
    }

    /** How many were left out in the minute before; negative if this one is left out, too. */
    private synchronized int mayWrite() {
        Instant now = time.instant();
        int untold = 0;
        if (minute.equals(Instant.MIN) || !now.isBefore(minute.plus(MINUTE)) || now.isBefore(minute)) {
            untold = leftOut;
            minute = now;
            written = 0;
            leftOut = 0;
        }
        if (written >= REFUSALS_A_MINUTE) {
            leftOut++;
            return -1;
        }
        written++;
        return untold;
    }

    private AuditLine line(String who, String what, String detail, String from) {
        return new AuditLine(time.instant(), cut(who, MOST_WHO), what, cut(detail, MOST_DETAIL), cut(from, MOST_FROM));
    }

    private static String cut(String text, int most) {
        return text.length() > most ? text.substring(0, most) : text;
    }
}
