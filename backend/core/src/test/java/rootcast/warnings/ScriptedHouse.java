package rootcast.warnings;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.climate.HourlySeries;
import rootcast.crop.CommonPractice;
import rootcast.crop.CropRecipe;
import rootcast.crop.MistNeed;
import rootcast.rounds.BatchCare;
import rootcast.rounds.Care;
import rootcast.rounds.OneHouse;
import rootcast.rounds.Rhythm;
import rootcast.rounds.Task;
import rootcast.rounds.Treatment;
import rootcast.site.Site;

/**
 * A house whose climate keeps its recipe, with noise, until a test plants a fault in it. Hours are counted from midnight of
 * 2 March 2026 UTC, which is also the site's clock.
 */
final class ScriptedHouse {

    static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    static final long START_HOUR = HourlySeries.hourOf(START);
    static final Site UTC_SITE = new Site("S", "Site", java.time.ZoneId.of("Etc/UTC"), java.time.DayOfWeek.MONDAY);

    private static final int BEFORE_HOURS = 15 * 24;

    private final Map<Measured, Map<Long, Double>> series = new EnumMap<>(Measured.class);
    private final List<Watched.Resident> residents = new ArrayList<>();
    private final List<Care> cares = new ArrayList<>();
    private final List<Treatment> treatments = new ArrayList<>();

    static Instant at(int day, int hour) {
        return START.plus(Duration.ofHours(24L * day + hour));
    }

    /**
     * Calm weather around the recipe: medium 22 °C, air 21.5 by night and 24.5 by day, sun up to 270 µmol at noon.
     *
     * @param nightPercent humidity at night
     * @param dayPercent   and by day
     */
    static ScriptedHouse calm(long seed, double nightPercent, double dayPercent, double level, int days) {
        ScriptedHouse house = new ScriptedHouse();
        Random random = new Random(seed);
        for (Measured measured : Measured.values()) {
            house.series.put(measured, new TreeMap<>());
        }
        for (long hour = -BEFORE_HOURS; hour < days * 24L; hour++) {
            int clock = (int) Math.floorMod(hour, 24L);
            double sun = Math.max(0, Math.sin(Math.PI * (clock + 0.5 - 6) / 12));
            house.set(Measured.MEDIUM_C, hour, 22 + 0.3 * random.nextGaussian() + 0.4 * sun);
            house.set(Measured.AIR_C, hour, 21.5 + 3 * sun + 0.2 * random.nextGaussian());
            double percent = nightPercent + (dayPercent - nightPercent) * sun;
            house.set(Measured.HUMIDITY_PERCENT, hour, percent + 0.5 * random.nextGaussian());
            house.set(Measured.LIGHT_UMOL, hour, 270 * sun);
            house.set(Measured.MOISTURE_LEVEL, hour, level + 0.1 * random.nextGaussian());
        }
        return house;
    }

    private void set(Measured measured, long hour, double value) {
        series.get(measured).put(hour, value);
    }

    ScriptedHouse fault(Measured measured, int day, int hour, int hours, double value) {
        for (int each = 0; each < hours; each++) {
            set(measured, 24L * day + hour + each, value);
        }
        return this;
    }

    ScriptedHouse silent(Measured measured, int day, int hour, int hours) {
        return fault(measured, day, hour, hours, Double.NaN);
    }

    ScriptedHouse without(Measured measured) {
        series.get(measured).clear();
        return this;
    }

    ScriptedHouse with(OneHouse.Story story) {
        return with(story, CommonPractice.recipe(MistNeed.MEDIUM));
    }

    ScriptedHouse with(OneHouse.Story story, CropRecipe recipe) {
        BatchCare care = story.care();
        residents.add(new Watched.Resident(care.state(), recipe));
        return this;
    }

    ScriptedHouse did(Task task, @Nullable String batch, int day, int hour) {
        return did(task, batch, day, hour, null);
    }

    ScriptedHouse did(Task task, @Nullable String batch, int day, int hour, @Nullable Integer level) {
        return did(task, batch, at(day, hour), level);
    }

    ScriptedHouse did(Task task, @Nullable String batch, Instant when, @Nullable Integer level) {
        cares.add(new Care(
                task.wireName() + "." + batch + "." + when,
                task,
                OneHouse.HOUSE,
                batch,
                UTC_SITE.dayOf(when),
                true,
                when,
                level));
        return this;
    }

    /** Salts of the medium, mS/cm. */
    ScriptedHouse measured(double ecMsPerCm, Instant when) {
        return measured(OneHouse.HOUSE, ecMsPerCm, when);
    }

    ScriptedHouse measured(String house, double ecMsPerCm, Instant when) {
        cares.add(new Care(
                Task.EC_CHECK.wireName() + "." + house + "." + when,
                Task.EC_CHECK,
                house,
                null,
                UTC_SITE.dayOf(when),
                true,
                when,
                null,
                ecMsPerCm));
        return this;
    }

    ScriptedHouse with(Treatment treatment) {
        treatments.add(treatment);
        return this;
    }

    private Watched watched() {
        return new Watched(
                UTC_SITE,
                OneHouse.HOUSE,
                (measured, hour) -> series.get(measured).getOrDefault(hour - START_HOUR, Double.NaN),
                residents,
                cares,
                treatments);
    }

    /** Warnings of the two weeks before and all hours up to the moment. */
    List<Warning> warningsUntil(int day, int hour) {
        return warningsAt(at(day, hour));
    }

    List<Warning> warningsAt(Instant now) {
        long until = HourlySeries.hourOf(now);
        return Watch.over(watched(), Rhythm.USUAL, until - 14 * 24, until, now);
    }

    List<Warning> warningsAt(HouseWatch watch, Instant now) {
        long until = HourlySeries.hourOf(now);
        return watch.over(watched(), Rhythm.USUAL, until - 14 * 24, until, now);
    }

    List<Watch.Seen> seen(Warning warning, int day, int hour, int hours) {
        long from = START_HOUR + 24L * day + hour;
        return Watch.seen(watched(), warning, from, from + hours);
    }
}
