package rootcast.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What a house's hour is, and what is odd about the readings it is made of.
 *
 * <p>A function of the readings that are there and of nothing else: not of the order they came in, nor of what was said
 * about them before. The rules in force, in the order they are asked:
 *
 * <ol>
 *   <li>{@linkplain FlagKind#SPIKE spike}: left out;
 *   <li>{@linkplain FlagKind#STEP step}: named, and used, since doors open and mist comes on;
 *   <li>{@linkplain FlagKind#FLAT_LINE flat line}: left out where another sensor of the house moved, else named and used;
 *   <li>{@linkplain FlagKind#DISAGREEMENT disagreement}: left out where most others agree, else all are named and used.
 * </ol>
 *
 * <p>Range, duplicates, late readings and clocks are told from one reading alone, when it arrives, by whoever stores it.
 *
 * <p>Source: order of the tests after Zahumenský (2004), WMO CBS expert team on automatic weather stations; window and
 * median of the spike after Hampel; the vote of redundant sensors as in the USGS glacier network's metadata, credited
 * there to Zahumenský. Our reading of them and every limit: docs/models/climate-quality.md.
 */
public final class ReadingQuality {

    /** Hours of one value that make a flat line, the hour itself among them. */
    public static final int FLAT_HOURS = 12;

    /** A new reading can change what is said of readings so far before it. */
    private static final Duration SPIKE_REACH = Duration.ofMinutes(30);

    private static final long SPIKE_REACH_MICROS = SPIKE_REACH.toMillis() * 1_000;

    private static final long STEP_REACH_MICROS = 10 * 60_000_000L;
    private static final int SPIKE_SIDE = 3;
    private static final int FEWEST_FOR_SPIKE = 5;

    /** Three robust standard deviations: 1.4826 times the median deviation estimates one (Hampel). */
    private static final double SPIKE_DEVIATIONS = 3 * 1.4826;

    private final Quantity quantity;
    private final QualityLimits limits;
    private final SortedMap<String, SensorReadings> sensors;

    /** @param sensors what is known of each sensor of one house and quantity, by code */
    public ReadingQuality(Quantity quantity, Map<String, SensorReadings> sensors) {
        this.quantity = quantity;
        this.limits = QualityLimits.of(quantity);
        this.sensors = new TreeMap<>(sensors);
    }

    /**
     * An hour of the house.
     *
     * @param totalMicro sum of the good readings in millionths of the unit
     * @param readings   how many those are
     * @param leftOut    readings that are there but not in the sum
     */
    public record Hour(long totalMicro, int readings, int leftOut, List<QualityFlag> flags) {}

    /** Hours whose judgement may change with readings at these moments. */
    public static SortedSet<Long> reachedFrom(Collection<Instant> moments) {
        SortedSet<Long> reached = new TreeSet<>();
        for (Instant at : moments) {
            long last = HourlySeries.hourOf(at) + FLAT_HOURS - 1;
            for (long hour = HourlySeries.hourOf(at.minus(SPIKE_REACH)); hour <= last; hour++) {
                reached.add(hour);
            }
        }
        return reached;
    }

    /** The first hour that must be known to judge {@code hour}. */
    public static long neededFrom(long hour) {
        return hour - FLAT_HOURS;
    }

    /** @param overridden flags that are still named but keep nothing out */
    public Hour judge(long hour, Set<QualityFlag.Key> overridden) {
        List<QualityFlag> flags = new ArrayList<>();
        SortedMap<String, SensorHour> hours = new TreeMap<>();
        sensors.forEach((code, readings) -> {
            SensorHour sum = goodOf(code, readings, hour, overridden, flags);
            if (sum.found > 0) {
                hours.put(code, sum);
            }
        });
        int found = hours.values().stream().mapToInt(each -> each.found).sum();
        leaveOutFlat(hours, hour, overridden, flags);
        leaveOutDisagreeing(hours, hour, overridden, flags);
        long total = 0;
        int used = 0;
        for (SensorHour sum : hours.values()) {
            total += sum.totalMicro;
            used += sum.used;
        }
        flags.sort(QualityFlag.ORDER);
        return new Hour(total, used, found - used, flags);
    }

    private static final class SensorHour {
        private long totalMicro;
        private int used;
        private int found;

        double mean() {
            return totalMicro / 1e6 / used;
        }

        void leaveOut() {
            totalMicro = 0;
            used = 0;
        }
    }

    private SensorHour goodOf(
            String code, SensorReadings readings, long hour, Set<QualityFlag.Key> overridden, List<QualityFlag> flags) {
        SensorHour sum = new SensorHour();
        int until = readings.indexFrom((hour + 1) * SensorReadings.HOUR_MICROS);
        for (int i = readings.indexFrom(hour * SensorReadings.HOUR_MICROS); i < until; i++) {
            sum.found++;
            QualityFlag spike = spike(code, readings, i);
            if (spike != null) {
                flags.add(spike);
            } else {
                addStep(code, readings, i, flags);
            }
            if (spike == null || overridden.contains(spike.key())) {
                sum.totalMicro += HourlySeries.microC(readings.value(i));
                sum.used++;
            }
        }
        return sum;
    }

    /** Seven readings, three to each side within half an hour; five are enough at an end. */
    private @Nullable QualityFlag spike(String code, SensorReadings readings, int index) {
        if (limits.spike() == Double.POSITIVE_INFINITY) {
            return null;
        }
        long at = readings.micros(index);
        int from = index;
        while (from > 0 && index - from < SPIKE_SIDE && at - readings.micros(from - 1) <= SPIKE_REACH_MICROS) {
            from--;
        }
        int last = index;
        while (last + 1 < readings.size()
                && last - index < SPIKE_SIDE
                && readings.micros(last + 1) - at <= SPIKE_REACH_MICROS) {
            last++;
        }
        if (last - from + 1 < FEWEST_FOR_SPIKE || readings.spread(from, last) <= limits.spike()) {
            return null; // where all lie so near each other, none is far from the middle: most of ingest ends here
        }
        double[] around = new double[last - from + 1];
        for (int i = 0; i < around.length; i++) {
            around[i] = readings.value(from + i);
        }
        double middle = median(around);
        double off = Math.abs(readings.value(index) - middle);
        if (off <= limits.spike()) {
            return null;
        }
        for (int i = 0; i < around.length; i++) {
            around[i] = Math.abs(around[i] - middle);
        }
        double limit = Math.max(limits.spike(), SPIKE_DEVIATIONS * median(around));
        return off <= limit
                ? null
                : new QualityFlag(
                        FlagKind.SPIKE, code, SensorReadings.instant(at), readings.value(index), middle, limit, true);
    }

    private void addStep(String code, SensorReadings readings, int index, List<QualityFlag> flags) {
        int before = index - 1;
        while (before >= 0
                && readings.micros(index) - readings.micros(before) <= STEP_REACH_MICROS
                && spike(code, readings, before) != null) {
            before--;
        }
        if (before < 0 || readings.micros(index) - readings.micros(before) > STEP_REACH_MICROS) {
            return;
        }
        double value = readings.value(index);
        if (Math.abs(value - readings.value(before)) > limits.step()) {
            flags.add(new QualityFlag(
                    FlagKind.STEP,
                    code,
                    SensorReadings.instant(readings.micros(index)),
                    value,
                    readings.value(before),
                    limits.step(),
                    false));
        }
    }

    private void leaveOutFlat(
            SortedMap<String, SensorHour> hours, long hour, Set<QualityFlag.Key> overridden, List<QualityFlag> flags) {
        List<String> flat = hours.keySet().stream()
                .filter(code -> isFlat(sensors.get(code), hour))
                .toList();
        boolean anotherMoved =
                hours.entrySet().stream().anyMatch(each -> !flat.contains(each.getKey()) && each.getValue().used > 0);
        for (String code : flat) {
            double value = sensors.get(code).value(sensors.get(code).indexFrom(hour * SensorReadings.HOUR_MICROS));
            var flag = new QualityFlag(
                    FlagKind.FLAT_LINE, code, HourlySeries.startOf(hour), value, Double.NaN, FLAT_HOURS, anotherMoved);
            flags.add(flag);
            if (anotherMoved && !overridden.contains(flag.key())) {
                hours.get(code).leaveOut();
            }
        }
    }

    /** Looks back only, so that an hour once past is not judged by what comes long after it. */
    private boolean isFlat(SensorReadings readings, long hour) {
        int index = readings.indexFrom((hour + 1) * SensorReadings.HOUR_MICROS) - 1;
        double value = readings.value(index);
        if (!limits.mayBeFlat(value)) {
            return false;
        }
        int first = readings.indexFrom((hour - FLAT_HOURS + 1) * SensorReadings.HOUR_MICROS);
        for (; index >= first; index--) {
            if (readings.value(index) != value) {
                return false;
            }
        }
        for (long each = hour - FLAT_HOURS + 1; each <= hour; each++) {
            if (!readings.isMeasured(each)) {
                return false;
            }
        }
        return true;
    }

    private void leaveOutDisagreeing(
            SortedMap<String, SensorHour> hours, long hour, Set<QualityFlag.Key> overridden, List<QualityFlag> flags) {
        SortedMap<String, Double> means = new TreeMap<>();
        hours.forEach((code, sum) -> {
            if (sum.used > 0) {
                means.put(code, sum.mean());
            }
        });
        if (means.size() < 2) {
            return;
        }
        double middle =
                median(means.values().stream().mapToDouble(Double::doubleValue).toArray());
        long agreeing = means.values().stream()
                .filter(mean -> Math.abs(mean - middle) <= limits.disagreement() / 2)
                .count();
        boolean mostAgree = means.size() > 2 && agreeing * 2 > means.size();
        means.forEach((code, mean) -> {
            double off = mostAgree ? Math.abs(mean - middle) : farthest(means, mean);
            if (off > limits.disagreement()) {
                double expected = mostAgree ? middle : others(means, code);
                var flag = new QualityFlag(
                        FlagKind.DISAGREEMENT,
                        code,
                        HourlySeries.startOf(hour),
                        mean,
                        expected,
                        limits.disagreement(),
                        mostAgree);
                flags.add(flag);
                if (mostAgree && !overridden.contains(flag.key())) {
                    hours.get(code).leaveOut();
                }
            }
        });
    }

    private static double farthest(Map<String, Double> means, double from) {
        return means.values().stream()
                .mapToDouble(mean -> Math.abs(mean - from))
                .max()
                .orElse(0);
    }

    private static double others(Map<String, Double> means, String code) {
        return median(means.entrySet().stream()
                .filter(each -> !each.getKey().equals(code))
                .mapToDouble(Map.Entry::getValue)
                .toArray());
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    public Quantity quantity() {
        return quantity;
    }
}
