package rootcast.scenario;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Random;
import rootcast.availability.SupplyLot;
import rootcast.availability.TableLot;

/**
 * A lot over ten days whose outlook may turn better or worse.
 *
 * @param readyBy odds of being ready by each day, never falling
 * @param tail    odds of at least so many trays, never rising, the first 1
 */
record RandomLot(String batch, double[] readyBy, double[] tail, LocalDate until) {

    static final LocalDate FIRST_DAY = LocalDate.parse("2026-03-02");
    static final int DAYS = 10;

    /** A grid, so that products meet a confidence exactly now and then. */
    private static final double[] ODDS = {0.2, 0.5, 0.6, 0.8, 0.9, 0.95, 1, 1, 1, 1, 1, 1};

    static RandomLot of(String batch, Random random) {
        int soonest = random.nextInt(4);
        double[] readyBy = new double[DAYS];
        System.arraycopy(rising(DAYS, random), 0, readyBy, soonest, DAYS - soonest);
        double[] rising = rising(2 + random.nextInt(19), random);
        double[] tail = new double[rising.length + 1];
        tail[0] = 1;
        for (int n = 1; n < tail.length; n++) {
            tail[n] = rising[rising.length - n];
        }
        return new RandomLot(batch, readyBy, tail, FIRST_DAY.plusDays(soonest + 1 + random.nextInt(9)));
    }

    private static double[] rising(int length, Random random) {
        double[] odds = new double[length];
        Arrays.setAll(odds, i -> ODDS[random.nextInt(ODDS.length)]);
        Arrays.sort(odds);
        return odds;
    }

    SupplyLot supply() {
        return TableLot.product(batch, FIRST_DAY, readyBy, tail, until);
    }

    /** Counted tray by tray. */
    int offers(LocalDate date, double confidence) {
        double ready = readyBy[(int) Math.min(DAYS - 1, date.toEpochDay() - FIRST_DAY.toEpochDay())];
        int trays = 0;
        while (trays + 1 < tail.length && ready * tail[trays + 1] >= confidence - 1e-12) {
            trays++;
        }
        return date.isAfter(until) ? 0 : trays;
    }

    /** Some died, or left on a truck: so many trays fewer whatever happens. */
    RandomLot without(int trays) {
        double[] fewer = trays < tail.length ? Arrays.copyOfRange(tail, trays, tail.length) : new double[1];
        fewer[0] = 1;
        return new RandomLot(batch, readyBy, fewer, until);
    }

    RandomLot with(int trays) {
        double[] more = new double[tail.length + trays];
        Arrays.fill(more, 0, trays, 1);
        System.arraycopy(tail, 0, more, trays, tail.length);
        return new RandomLot(batch, readyBy, more, until);
    }

    /** A cold spell: everything a day later. */
    RandomLot later() {
        double[] delayed = new double[DAYS];
        System.arraycopy(readyBy, 0, delayed, 1, DAYS - 1);
        return new RandomLot(batch, delayed, tail, until.plusDays(1));
    }

    @Override
    public String toString() {
        return "%s %s %s until %s".formatted(batch, Arrays.toString(readyBy), Arrays.toString(tail), until);
    }
}
