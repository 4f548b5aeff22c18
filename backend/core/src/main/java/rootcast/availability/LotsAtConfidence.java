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
    final long total;

    private final int width;
    private final long[] gaps;
    private final long[] ready;

    LotsAtConfidence(LotOdds odds, double confidence) {
        this.confidence = confidence;
        this.dates = odds.dates.count();
        this.width = dates + 2;
        this.gaps = new long[width * width];
        this.ready = new long[width];
        long sum = 0;
        int[] trays = new int[dates + 1];
        for (int lot = 0; lot < odds.lots.size(); lot++) {
            int last = odds.lastDate(lot);
            for (int date = 1; date <= last; date++) {
                trays[date] = odds.traysAt(lot, date, confidence);
                ready[date] += trays[date];
            }
            sum += last == 0 ? 0 : trays[last];
            for (int from = 0; from < last; from++) {
                gaps[from * width + last + 1] += trays[last] - trays[from];
            }
        }
        total = sum;
        for (int from = 0; from <= dates; from++) {
            for (int until = from + 2; until <= dates + 1; until++) {
                gaps[from * width + until] += gaps[from * width + until - 1];
            }
        }
    }

    /** Trays usable on a date, before promises. */
    long ready(int date) {
        return ready[date];
    }

    /** Trays whose whole window lies strictly between two dates; 0 and {@code dates + 1} stand for the open ends. */
    long gap(int afterExclusive, int beforeExclusive) {
        return gaps[afterExclusive * width + beforeExclusive];
    }
}
