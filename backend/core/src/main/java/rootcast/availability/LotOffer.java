package rootcast.availability;

import java.time.LocalDate;
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

    static LotOffer of(TrayOdds odds, double confidence) {
        double least = confidence - SupplyLot.ROUNDING;
        Days days = odds.daysWith(least);
        int most = odds.mostWith(least);
        if (days == null || most == 0) {
            return NOTHING;
        }
        long first = days.first().toEpochDay();
        int[] trays = new int[Math.toIntExact(days.last().toEpochDay() - first + 1)];
        int before = 0;
        for (int day = 0; day < trays.length; day++) {
            before = supported(odds.on(LocalDate.ofEpochDay(first + day)), least, before, most);
            trays[day] = before;
        }
        return new LotOffer(first, unbroken(trays, first, odds));
    }

    /** The most trays with the probability, looked for around a guess. */
    private static int supported(IntToDoubleFunction atLeast, double least, int guess, int most) {
        int enough = 0;
        int tooMany = most + 1;
        int step = 1;
        int at = Math.max(1, guess);
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
