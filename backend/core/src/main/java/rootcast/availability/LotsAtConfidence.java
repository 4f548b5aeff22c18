package rootcast.availability;

/**
 * The lots as they count at one confidence: releases of trays, each usable from a listed date to its lot's last one.
 *
 * <p>What a lot offers more on a date than on the one before is one release; the releases of a lot end together.
 */
final class LotsAtConfidence {

    final double confidence;
    final int dates;

    /** Trays of all releases. */
    final int total;

    /** Number of each lot's last usable date, rising with the lot. */
    private final int[] lastDate;

    /** Per lot, trays offered by date number up to its last date; 0 before all. */
    private final int[][] trays;

    private final int[] ready;

    LotsAtConfidence(LotOdds odds, double confidence) {
        this.confidence = confidence;
        this.dates = odds.dates.count();
        this.lastDate = new int[odds.lots.size()];
        this.trays = new int[lastDate.length][];
        this.ready = new int[dates + 1];
        int sum = 0;
        for (int lot = 0; lot < lastDate.length; lot++) {
            lastDate[lot] = odds.lastDate(lot);
            int[] offered = new int[lastDate[lot] + 1];
            for (int date = 1; date < offered.length; date++) {
                offered[date] = odds.traysAt(lot, date, confidence);
                ready[date] += offered[date];
            }
            trays[lot] = offered;
            sum += offered[lastDate[lot]];
        }
        total = sum;
    }

    /** Trays usable on a date, before promises. */
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
        private int nextLot;
        private int inside;

        private Gap(int afterExclusive) {
            after = afterExclusive;
            while (nextLot < lastDate.length && lastDate[nextLot] <= after) {
                nextLot++;
            }
        }

        /** Trays inside, if it ends before {@code dateExclusive}; {@code dates + 1} stands for the open end. */
        int widenTo(int dateExclusive) {
            while (nextLot < lastDate.length && lastDate[nextLot] < dateExclusive) {
                int[] offered = trays[nextLot];
                inside += offered[offered.length - 1] - offered[after];
                nextLot++;
            }
            return inside;
        }
    }
}
