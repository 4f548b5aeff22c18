package rootcast.availability;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.availability.TrayOdds.Days;

/**
 * What a lot offers at one confidence, day by day: first more, then fewer trays. So each tray of it, counted from the sure
 * ones on, has one window of days, and a later tray's window lies within an earlier one's.
 *
 * <p>Tray k counts on the days on which P(at least k trays) reaches the confidence. If those days are broken, as a
 * cold week in mid-rooting can make them, only the unbroken run around the day counts on which that probability is
 * highest, and on no day that an earlier tray has lost. That never offers more than the probability supports, takes
 * nothing away where days are not broken, does not depend on the dates asked about, and keeps offers nested: the least of
 * functions that rise and then fall is such a function (they are quasi-concave), whatever the confidence.
 */
final class LotOffer {

    private static final LotOffer NOTHING = new LotOffer(0, new int[0]);

    private final long firstDay;

    /** By day from the first on. */
    private final int[] trays;

    private LotOffer(long firstDay, int[] trays) {
        this.firstDay = firstDay;
        this.trays = trays;
    }

    /**
     * The offers at several confidences. Most of the work is to find the odds of a day, and that is done once for all of them.
     *
     * @param confidences falling
     */
    static LotOffer[] of(TrayOdds odds, double... confidences) {
        Found[] found = new Found[confidences.length];
        long first = Long.MAX_VALUE;
        long last = Long.MIN_VALUE;
        for (int i = 0; i < found.length; i++) {
            found[i] = Found.of(odds, confidences[i] - SupplyLot.ROUNDING);
            first = Math.min(first, found[i].first);
            last = Math.max(last, found[i].last());
        }
        for (long day = first; day <= last; day++) {
            IntToDoubleFunction atLeast = odds.on(LocalDate.ofEpochDay(day));
            int surer = 0;
            for (Found offer : found) {
                surer = offer.find(day, atLeast, surer);
            }
        }
        LotOffer[] offers = new LotOffer[found.length];
        Arrays.setAll(offers, i -> found[i].offer(odds));
        return offers;
    }

    /** The most trays with the probability, by day. */
    private record Found(double least, int most, long first, int[] trays) {

        static Found of(TrayOdds odds, double least) {
            Days days = odds.daysWith(least);
            int most = odds.mostWith(least);
            if (days == null || most == 0) {
                return new Found(least, 0, Long.MAX_VALUE, new int[0]);
            }
            long first = days.first().toEpochDay();
            return new Found(
                    least, most, first, new int[Math.toIntExact(days.last().toEpochDay() - first + 1)]);
        }

        long last() {
            return trays.length == 0 ? Long.MIN_VALUE : first + trays.length - 1;
        }

        LotOffer offer(TrayOdds odds) {
            return trays.length == 0 ? NOTHING : new LotOffer(first, unbroken(trays, first, odds));
        }

        /**
         * @param surer trays that have a higher probability, so this one too
         * @return trays with the probability
         */
        int find(long day, IntToDoubleFunction atLeast, int surer) {
            if (day < first || day > last()) {
                return surer;
            }
            int at = (int) (day - first);
            int before = at == 0 ? 0 : trays[at - 1];
            int guess = at < 2 ? before : 2 * before - trays[at - 2];
            trays[at] = search(atLeast, Math.min(surer, most), guess);
            return trays[at];
        }

        /** The most trays with the probability, looked for around a guess. */
        private int search(IntToDoubleFunction atLeast, int known, int guess) {
            int enough = known;
            int tooMany = most + 1;
            int step = 1;
            int at = Math.max(enough + 1, Math.min(guess, most));
            while (tooMany - enough > 1) {
                if (atLeast.applyAsDouble(at) >= least) {
                    enough = at;
                    at = enough + step;
                } else {
                    tooMany = at;
                    at = tooMany - step;
                }
                step *= 2;
                if (at <= enough || at >= tooMany) {
                    at = (enough + tooMany) >>> 1;
                }
            }
            return enough;
        }
    }

    private static int[] unbroken(int[] supported, long first, TrayOdds odds) {
        if (isRisingThenFalling(supported)) {
            return supported;
        }
        int most = 0;
        for (int trays : supported) {
            most = Math.max(most, trays);
        }
        int[] offered = supported.clone();
        for (int tray = 1; tray <= most; tray++) {
            if (isBroken(supported, tray)) {
                keepRunAround(bestDay(tray, supported, first, odds), tray, supported, offered);
            }
        }
        return offered;
    }

    private static boolean isRisingThenFalling(int[] trays) {
        boolean falls = false;
        for (int day = 1; day < trays.length; day++) {
            if (falls && trays[day] > trays[day - 1]) {
                return false;
            }
            falls |= trays[day] < trays[day - 1];
        }
        return true;
    }

    private static boolean isBroken(int[] supported, int tray) {
        int runs = 0;
        for (int day = 0; day < supported.length; day++) {
            boolean begins = supported[day] >= tray && (day == 0 || supported[day - 1] < tray);
            runs += begins ? 1 : 0;
        }
        return runs > 1;
    }

    private static int bestDay(int tray, int[] supported, long first, TrayOdds odds) {
        int best = 0;
        double highest = -1;
        for (int day = 0; day < supported.length; day++) {
            if (supported[day] >= tray) {
                double probability = odds.on(LocalDate.ofEpochDay(first + day)).applyAsDouble(tray);
                if (probability > highest) {
                    highest = probability;
                    best = day;
                }
            }
        }
        return best;
    }

    private static void keepRunAround(int best, int tray, int[] supported, int[] offered) {
        int from = best;
        while (from > 0 && supported[from - 1] >= tray) {
            from--;
        }
        int until = best;
        while (until + 1 < supported.length && supported[until + 1] >= tray) {
            until++;
        }
        for (int day = 0; day < offered.length; day++) {
            if (day < from || day > until) {
                offered[day] = Math.min(offered[day], tray - 1);
            }
        }
    }

    int on(LocalDate date) {
        long day = date.toEpochDay() - firstDay;
        return day < 0 || day >= trays.length ? 0 : trays[(int) day];
    }

    /** First day that offers so many trays; null if none does. */
    @Nullable
    LocalDate firstWith(int number) {
        for (int day = 0; day < trays.length; day++) {
            if (trays[day] >= number) {
                return LocalDate.ofEpochDay(firstDay + day);
            }
        }
        return null;
    }

    /** Last day that offers so many trays; null if none does. */
    @Nullable
    LocalDate lastWith(int number) {
        for (int day = trays.length - 1; day >= 0; day--) {
            if (trays[day] >= number) {
                return LocalDate.ofEpochDay(firstDay + day);
            }
        }
        return null;
    }
}
