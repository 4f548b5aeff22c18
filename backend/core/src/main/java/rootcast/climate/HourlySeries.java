package rootcast.climate;

import java.time.Instant;
import java.util.Arrays;

/**
 * The readings of one quantity in one house, summed by hour.
 *
 * <p>An hour keeps the sum of its readings in whole millionths of the unit and their number. Sums of integers do not
 * depend on their order, so any order of arrival leaves the same series to the last bit. Telling a repeated reading
 * from a new one is the store's business: what is added here counts.
 *
 * <p>Hours are kept in blocks that a series shares with its {@link #snapshot}s until one of them writes, so that a
 * snapshot costs what has changed since the last one. A series that is still written to is not safe for use
 * by several threads at once; a snapshot, which nobody writes to, is.
 */
public final class HourlySeries {

    static final long HOUR_SECONDS = 3_600;

    private static final double MICRO = 1e6;

    /** Keeps one reading with a wild clock from making the arrays huge: 50 years of hours. */
    private static final long WIDEST_HOURS = 50L * 366 * 24;

    /** Hours of a block: a good five days, so that an hour's reading copies one kilobyte and not the whole series. */
    private static final int BLOCK = 128;

    private static final Block NO_HOURS = new Block(new long[BLOCK], new int[BLOCK]);

    /** Index of the first block, as an hour divided by {@link #BLOCK}. */
    private long firstBlock;

    private Block[] blocks = {};

    /** Which blocks no snapshot shares: only these may be written to. */
    private boolean[] own = {};

    private boolean frozen;

    private record Block(long[] totalMicro, int[] readings) {
        Block copy() {
            return new Block(totalMicro.clone(), readings.clone());
        }
    }

    /** The hour that holds {@code at}, counted from 1970-01-01T00:00Z. */
    public static long hourOf(Instant at) {
        return Math.floorDiv(at.getEpochSecond(), HOUR_SECONDS);
    }

    public static Instant startOf(long hour) {
        return Instant.ofEpochSecond(hour * HOUR_SECONDS);
    }

    /** A reading in the millionths of its unit that {@link #put} takes. */
    public static long microC(double celsius) {
        if (!Double.isFinite(celsius) || Math.abs(celsius) > 1e6) {
            throw new IllegalArgumentException(celsius + " is no reading");
        }
        return Math.round(celsius * MICRO);
    }

    /** Adds one reading. Whether it is plausible is for {@link Quantity#refusalOf}. */
    public void add(Instant at, double celsius) {
        long micro = microC(celsius);
        long hour = hourOf(at);
        Block block = blockToWrite(hour);
        block.totalMicro[inBlock(hour)] += micro;
        block.readings[inBlock(hour)]++;
    }

    /** The series as it is now, for any number of threads; it refuses to be written to. */
    public HourlySeries snapshot() {
        HourlySeries snapshot = shared();
        snapshot.frozen = true;
        return snapshot;
    }

    /** Another series of the same hours, to be written to by itself. */
    public HourlySeries copy() {
        return shared();
    }

    private HourlySeries shared() {
        HourlySeries other = new HourlySeries();
        other.firstBlock = firstBlock;
        other.blocks = blocks.clone();
        other.own = new boolean[blocks.length];
        if (!frozen) {
            Arrays.fill(own, false);
        }
        return other;
    }

    /** Sets what is stored of an hour, in place of whatever was there; no readings means a missing hour. */
    public void put(long hour, long totalMicroC, int readings) {
        if (readings < 0 || (readings == 0 && totalMicroC != 0)) {
            throw new IllegalArgumentException(
                    "hour %d: %d readings cannot sum to %d millionths".formatted(hour, readings, totalMicroC));
        }
        Block block = blockToWrite(hour);
        block.totalMicro[inBlock(hour)] = totalMicroC;
        block.readings[inBlock(hour)] = readings;
    }

    public boolean isMeasured(long hour) {
        return readings(hour) > 0;
    }

    public int readings(long hour) {
        return blockOf(hour).readings[inBlock(hour)];
    }

    /** Mean of the hour's readings in the quantity's unit (the C of the name is for the temperatures it began with); not a number if it has none. */
    public double meanC(long hour) {
        Block block = blockOf(hour);
        int at = inBlock(hour);
        return block.readings[at] > 0 ? block.totalMicro[at] / MICRO / block.readings[at] : Double.NaN;
    }

    private static int inBlock(long hour) {
        return (int) Math.floorMod(hour, (long) BLOCK);
    }

    private Block blockOf(long hour) {
        long index = Math.floorDiv(hour, (long) BLOCK) - firstBlock;
        return index >= 0 && index < blocks.length ? blocks[(int) index] : NO_HOURS;
    }

    private Block blockToWrite(long hour) {
        if (frozen) {
            throw new IllegalStateException("a snapshot is not written to");
        }
        long wanted = Math.floorDiv(hour, (long) BLOCK);
        if (blocks.length == 0) {
            firstBlock = wanted;
        }
        long from = Math.min(firstBlock, wanted);
        long until = Math.max(firstBlock + blocks.length, wanted + 1);
        if ((until - from) * BLOCK > WIDEST_HOURS) {
            throw new IllegalArgumentException(
                    "a reading at %s is over 50 years from the others".formatted(startOf(hour)));
        }
        if (until - from > blocks.length) {
            growTo(from, until);
        }
        int index = (int) (wanted - firstBlock);
        if (!own[index]) {
            blocks[index] = blocks[index].copy();
            own[index] = true;
        }
        return blocks[index];
    }

    private void growTo(long fromInclusive, long untilExclusive) {
        Block[] grown = new Block[(int) (untilExclusive - fromInclusive)];
        boolean[] grownOwn = new boolean[grown.length];
        Arrays.fill(grown, NO_HOURS);
        int shift = (int) (firstBlock - fromInclusive);
        System.arraycopy(blocks, 0, grown, shift, blocks.length);
        System.arraycopy(own, 0, grownOwn, shift, own.length);
        blocks = grown;
        own = grownOwn;
        firstBlock = fromInclusive;
    }

    /** Readings in all hours together. */
    public long readings() {
        return Arrays.stream(blocks)
                .flatMapToInt(block -> Arrays.stream(block.readings))
                .asLongStream()
                .sum();
    }
}
