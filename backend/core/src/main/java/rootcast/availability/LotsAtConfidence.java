package rootcast.availability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The lots as they count at one confidence: trays, each with its window of listed dates.
 *
 * <p>What a lot offers more on a date than on the one before begins there, what it offers fewer ended on the one before. As
 * its offer rises and then falls, the trays that began last end first: their windows are nested.
 */
final class LotsAtConfidence {

    final double confidence;
    final int dates;

    /** Trays that are usable on some listed date. */
    final int total;

    /** Trays usable on a date, before promises. */
    private final int[] ready;

    /** Those that end first come first. */
    private final Window[] windows;

    /** Trays of one lot that are usable from one listed date to another, both included. */
    private record Window(int from, int to, int trays) {}

    LotsAtConfidence(List<SupplyLot> lots, ListedDates listed, double confidence) {
        this(confidence, listed.count(), offers(lots, listed, confidence));
    }

    /**
     * @param offers of each lot by date number; 0 and the last do not count
     */
    private LotsAtConfidence(double confidence, int dates, List<int[]> offers) {
        this.confidence = confidence;
        this.dates = dates;
        this.ready = new int[dates + 1];
        List<Window> all = new ArrayList<>();
        int sum = 0;
        for (int[] offer : offers) {
            sum += addWindows(offer, all);
        }
        total = sum;
        all.sort(Comparator.comparingInt(Window::to));
        windows = all.toArray(Window[]::new);
    }

    /**
     * The lots as they come out in one world, where every tray that can leave is certain.
     *
     * @param trays of each lot by date number; they rise and then fall
     */
    static LotsAtConfidence inWorld(int dates, List<int[]> trays) {
        return new LotsAtConfidence(1, dates, trays);
    }

    private static List<int[]> offers(List<SupplyLot> lots, ListedDates listed, double confidence) {
        List<int[]> offers = new ArrayList<>(lots.size());
        for (SupplyLot lot : lots) {
            LotOffer offer = lot.at(confidence);
            int[] byDate = new int[listed.count() + 1];
            for (int date = 1; date < byDate.length; date++) {
                byDate[date] = offer.on(listed.date(date));
            }
            offers.add(byDate);
        }
        return offers;
    }

    /** Adds the windows of a lot; how many trays they are. */
    private int addWindows(int[] offer, List<Window> all) {
        int[] began = new int[dates + 1];
        int[] open = new int[dates + 1];
        int begun = 0;
        int before = 0;
        int sum = 0;
        for (int date = 1; date <= dates + 1; date++) {
            int now = date > dates ? 0 : offer[date];
            for (int ending = before - now; ending > 0; ) {
                int trays = Math.min(ending, open[begun - 1]);
                all.add(new Window(began[begun - 1], date - 1, trays));
                open[begun - 1] -= trays;
                begun -= open[begun - 1] == 0 ? 1 : 0;
                ending -= trays;
            }
            if (now > before) {
                began[begun] = date;
                open[begun++] = now - before;
                sum += now - before;
            }
            if (date <= dates) {
                ready[date] += now;
            }
            before = now;
        }
        return sum;
    }

    int ready(int date) {
        return ready[date];
    }

    /** The gaps that begin after a date; {@code widenTo} must be asked for rising dates. */
    Gap gapAfter(int dateExclusive) {
        return new Gap(dateExclusive);
    }

    /** A stretch between two dates, widened step by step; it counts the trays whose whole window lies inside. */
    final class Gap {

        private final int after;
        private int next;
        private int inside;

        private Gap(int afterExclusive) {
            after = afterExclusive;
        }

        /** Trays inside, if it ends before {@code dateExclusive}; {@code dates + 1} stands for the open end. */
        int widenTo(int dateExclusive) {
            while (next < windows.length && windows[next].to < dateExclusive) {
                inside += windows[next].from > after ? windows[next].trays : 0;
                next++;
            }
            return inside;
        }
    }
}
