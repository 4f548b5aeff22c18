package rootcast.warnings;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.LongFunction;

/**
 * Turns hours into stretches of trouble: so many bad hours in a row raise one, so many fine hours in a row end it.
 *
 * <p>Hours within the margin break both rows. Silent hours do neither, so a gap in the readings does not end a warning
 * and does not give it twice.
 *
 * @param raiseAfterHours over 0
 * @param clearAfterHours over 0
 */
public record Hysteresis(int raiseAfterHours, int clearAfterHours) {

    /**
     * @param sinceHour  first bad hour
     * @param raisedHour the bad hour that raised it
     * @param untilHour  first of the fine hours that ended it; {@link #LASTING} if none did
     * @param worst      the hour furthest beyond its limit
     */
    record Stretch(long sinceHour, long raisedHour, long untilHour, Sign worst, Set<String> batches) {

        static final long LASTING = Long.MAX_VALUE;
    }

    public Hysteresis {
        if (raiseAfterHours < 1 || clearAfterHours < 1) {
            throw new IllegalArgumentException(
                    "%d and %d hours must both be over 0".formatted(raiseAfterHours, clearAfterHours));
        }
    }

    List<Stretch> stretches(long fromInclusive, long untilExclusive, LongFunction<Sign> signs) {
        Row row = new Row();
        for (long hour = fromInclusive; hour < untilExclusive; hour++) {
            row.take(hour, signs.apply(hour));
        }
        if (row.raised) {
            row.close(Stretch.LASTING);
        }
        return row.found;
    }

    private final class Row {
        private final List<Stretch> found = new ArrayList<>();
        private final Set<String> batches = new LinkedHashSet<>();
        private boolean raised;
        private int badHours;
        private int fineHours;
        private long since;
        private long raisedAt;
        private long fineSince;
        private Sign worst = Sign.SILENT;

        void take(long hour, Sign sign) {
            switch (sign.level()) {
                case BAD -> bad(hour, sign);
                case FINE -> fine(hour);
                case BETWEEN -> {
                    fineHours = 0;
                    forgetUnlessRaised();
                }
                case SILENT -> {}
            }
        }

        private void bad(long hour, Sign sign) {
            fineHours = 0;
            since = badHours == 0 && !raised ? hour : since;
            badHours++;
            batches.addAll(sign.batches());
            if (worst.level() != Sign.Level.BAD || sign.excess() > worst.excess()) {
                worst = sign;
            }
            if (!raised && badHours >= raiseAfterHours) {
                raised = true;
                raisedAt = hour;
            }
        }

        private void fine(long hour) {
            fineSince = fineHours == 0 ? hour : fineSince;
            fineHours++;
            forgetUnlessRaised();
            if (raised && fineHours >= clearAfterHours) {
                close(fineSince);
            }
        }

        private void forgetUnlessRaised() {
            if (!raised) {
                badHours = 0;
                worst = Sign.SILENT;
                batches.clear();
            }
        }

        private void close(long untilHour) {
            found.add(new Stretch(since, raisedAt, untilHour, worst, Set.copyOf(batches)));
            raised = false;
            forgetUnlessRaised();
        }
    }
}
