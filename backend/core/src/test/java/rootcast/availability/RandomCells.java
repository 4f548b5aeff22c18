package rootcast.availability;

import java.util.Arrays;
import java.util.Random;

/** Cells with lots that grow, shrink and expire and promises of several confidences, over periods 1 to {@link #PERIODS}. */
final class RandomCells {

    static final int PERIODS = 7;

    private static final double[] CONFIDENCES = {0.5, 0.8, 0.9};

    private final Random random;

    RandomCells(long seed) {
        this.random = new Random(seed);
    }

    Periods next(boolean oneConfidence) {
        var cell = new Periods();
        int lots = random.nextInt(8);
        for (int lot = 0; lot < lots; lot++) {
            addLot(cell, "L" + lot);
        }
        int promises = random.nextInt(6);
        for (int promise = 0; promise < promises; promise++) {
            addPromise(cell, oneConfidence ? 0.9 : confidence(), 4);
        }
        return cell;
    }

    double confidence() {
        return CONFIDENCES[random.nextInt(CONFIDENCES.length)];
    }

    void addPromise(Periods cell, double confidence, int mostTrays) {
        cell.order(period(), 1 + random.nextInt(mostTrays), confidence);
    }

    void addLot(Periods cell, String batch) {
        if (random.nextBoolean()) {
            int from = period();
            cell.lot(batch, from, from + random.nextInt(3), 1 + random.nextInt(9));
            return;
        }
        if (random.nextBoolean()) {
            cell.lot(batch, risingAndFalling(random.nextInt(4) == 0));
            return;
        }
        double[] readyBy = new double[PERIODS];
        for (int day = 0; day < PERIODS; day++) {
            readyBy[day] = random.nextInt(4) == 0 ? 1 : random.nextDouble();
        }
        Arrays.sort(readyBy);
        double[] rising = new double[2 + random.nextInt(9)];
        for (int n = 0; n < rising.length; n++) {
            rising[n] = random.nextInt(3) == 0 ? 1 : random.nextDouble();
        }
        Arrays.sort(rising);
        double[] tail = new double[rising.length];
        for (int n = 0; n < tail.length; n++) {
            tail[n] = rising[rising.length - 1 - n];
        }
        tail[0] = 1;
        cell.lot(batch, readyBy, tail, period());
    }

    /** By day and trays: odds that rise and fall for each number of trays, or go up and down as they like. */
    private double[][] risingAndFalling(boolean anyhow) {
        double[][] atLeast = new double[PERIODS][2 + random.nextInt(9)];
        for (int n = 1; n < atLeast[0].length; n++) {
            double[] odds = new double[PERIODS];
            for (int day = 0; day < PERIODS; day++) {
                odds[day] = random.nextInt(3) == 0 ? random.nextDouble() : 1 - random.nextDouble() / 5;
            }
            if (!anyhow) {
                int peak = period();
                Arrays.sort(odds, 0, peak);
                Arrays.sort(odds, peak, PERIODS);
                reverse(odds, peak);
            }
            for (int day = 0; day < PERIODS; day++) {
                atLeast[day][n] = n == 1 ? odds[day] : Math.min(odds[day], atLeast[day][n - 1]);
            }
        }
        return atLeast;
    }

    private static void reverse(double[] values, int from) {
        for (int low = from, high = values.length - 1; low < high; low++, high--) {
            double value = values[low];
            values[low] = values[high];
            values[high] = value;
        }
    }

    int period() {
        return 1 + random.nextInt(PERIODS);
    }
}
