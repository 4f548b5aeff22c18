package rootcast.warnings;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.LongFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.climate.HourlySeries;
import rootcast.rounds.Care;
import rootcast.rounds.Rhythm;
import rootcast.rounds.Treatment;
import rootcast.warnings.Hysteresis.Stretch;
import rootcast.warnings.ResidentBatches.Resident;

/**
 * The warnings that stood in a house over a span of hours.
 *
 * <p>The same hours and facts give the same warnings, whenever and in whatever order they came in. A span should begin well
 * before the hours of interest: what went on before it is not known, a warning that began there starts with it.
 *
 * <p>Hours raise a warning. What people do ends one at once: care that was given, a level seen by hand that is as it should
 * be, the last batch concerned carried out. What lasts names only batches that are still there.
 */
public final class Watch {

    private final Watched house;
    private final long fromHour;
    private final long untilHour;
    private final Instant now;
    private final ResidentBatches residents;
    private final ClimateRules climate;
    private final List<Warning> warnings = new ArrayList<>();

    /** What was left undone by a moment, with who stood in the house then. */
    @FunctionalInterface
    private interface CareRule {
        Sign at(Instant now, List<Resident> present);
    }

    private Watch(Watched house, long fromHour, long untilHour, Instant now) {
        this.house = house;
        this.fromHour = fromHour;
        this.untilHour = untilHour;
        this.now = now;
        residents = new ResidentBatches(house, fromHour, untilHour + 1);
        climate = new ClimateRules(house, residents);
    }

    /**
     * @param untilExclusive the hour that is still running, or an earlier one
     * @param now            not before that hour begins
     */
    public static List<Warning> over(
            Watched house, Rhythm rhythm, long fromInclusive, long untilExclusive, Instant now) {
        Watch watch = new Watch(house, fromInclusive, untilExclusive, now);
        climateRules(watch.climate).forEach(watch::findClimate);
        watch.care(new CareRules(house, watch.residents, rhythm, fromInclusive, untilExclusive));
        return watch.warnings;
    }

    /** What the rule of a warning saw hour by hour, in its unit; empty for what rests on no value. */
    public static List<Seen> seen(Watched house, Warning warning, long fromInclusive, long untilExclusive) {
        ClimateRules rules = new ClimateRules(house, new ResidentBatches(house, fromInclusive, untilExclusive));
        LongFunction<Sign> signs = climateRules(rules).get(warning.kind());
        List<Seen> seen = new ArrayList<>();
        for (long hour = fromInclusive; signs != null && hour < untilExclusive; hour++) {
            Sign sign = signs.apply(hour);
            if (!Double.isNaN(sign.value()) && sign.unit().equals(warning.unit())) {
                seen.add(new Seen(HourlySeries.startOf(hour), sign.value(), sign.limit()));
            }
        }
        return seen;
    }

    /** @param at start of the hour */
    public record Seen(Instant at, double value, double limit) {}

    private static Map<WarningKind, LongFunction<Sign>> climateRules(ClimateRules rules) {
        Map<WarningKind, LongFunction<Sign>> signs = new EnumMap<>(WarningKind.class);
        signs.put(WarningKind.DRY_DOWN, rules::dryDown);
        signs.put(WarningKind.MEDIUM_DRY, rules::mediumDry);
        signs.put(WarningKind.OVER_MISTING, rules::overMisting);
        signs.put(WarningKind.MEDIUM_SATURATED, rules::mediumSaturated);
        signs.put(WarningKind.LEACHED, rules::leached);
        signs.put(WarningKind.MEDIUM_COLD, rules::mediumCold);
        signs.put(WarningKind.AIR_COLD, rules::airCold);
        signs.put(WarningKind.LIGHT_HIGH, rules::lightHigh);
        signs.put(WarningKind.AIR_WET, rules::airWet);
        signs.put(WarningKind.NIGHT_MIST_ON, rules::nightMistOn);
        return signs;
    }

    private void care(CareRules rules) {
        findCare(WarningKind.SCOUTING_MISSED, null, rules::scoutingMissed);
        for (Measured measured : Measured.values()) {
            if (measured.isExpectedEveryHour()) {
                for (Stretch stretch : stretches(WarningKind.NO_READINGS, hour -> rules.noReadings(measured, hour))) {
                    add(WarningKind.NO_READINGS, null, measured, stretch, ended(stretch));
                }
            }
        }
        TreeSet<String> batches = new TreeSet<>();
        house.residents()
                .forEach(resident -> batches.add(resident.state().batch().id()));
        for (String batch : batches) {
            findCare(WarningKind.MIST_NOT_WEANED, batch, (at, present) -> rules.mistNotWeaned(batch, at, present));
            findCare(WarningKind.NO_FEED, batch, (at, present) -> rules.noFeed(batch, at, present));
            findCare(WarningKind.PREVENTION_MISSED, batch, (at, present) -> rules.preventionMissed(batch, at, present));
        }
    }

    private void findClimate(WarningKind kind, LongFunction<Sign> signs) {
        for (Stretch stretch : stretches(kind, signs)) {
            add(kind, null, null, stretch, isLasting(stretch) ? seenMended(stretch, signs) : ended(stretch));
        }
    }

    /** One look that finds the moisture as it should be ends what looks had raised; a probe is given its hours. */
    private @Nullable Instant seenMended(Stretch stretch, LongFunction<Sign> signs) {
        boolean byHand = climate.isByHand(stretch.worst().unit(), untilHour - 1);
        long fine = untilHour + 1;
        while (byHand
                && fine - 1 > stretch.raisedHour()
                && signs.apply(fine - 1).level() == Sign.Level.FINE) {
            fine--;
        }
        return fine > untilHour ? null : HourlySeries.startOf(fine);
    }

    private void findCare(WarningKind kind, @Nullable String batch, CareRule rule) {
        LongFunction<Sign> signs = hour -> rule.at(HourlySeries.startOf(hour), residents.at(hour));
        for (Stretch stretch : stretches(kind, signs)) {
            Instant until = settled(stretch, rule);
            // Nobody could be told before the hour was over; what was done within it was done in time.
            if (until == null || until.isAfter(HourlySeries.startOf(stretch.raisedHour() + 1))) {
                add(kind, batch, null, stretch, until);
            }
        }
    }

    /** The moment at which what was done made the difference, to the minute and not to the hour. */
    private @Nullable Instant settled(Stretch stretch, CareRule rule) {
        boolean lasts = isLasting(stretch);
        if (lasts && rule.at(now, residents.at(now)).level() != Sign.Level.FINE) {
            return null;
        }
        Instant lastBad = HourlySeries.startOf((lasts ? untilHour : stretch.untilHour()) - 1);
        Instant atLatest = lasts ? now : HourlySeries.startOf(stretch.untilHour());
        return happenings()
                .filter(at -> at.isAfter(lastBad) && !at.isAfter(atLatest))
                .sorted()
                .filter(at -> rule.at(at, residents.at(at)).level() == Sign.Level.FINE)
                .findFirst()
                .orElse(lasts ? HourlySeries.startOf(untilHour) : atLatest);
    }

    private Stream<Instant> happenings() {
        return Stream.of(
                        house.cares().stream().map(Care::at),
                        house.treatments().stream().map(Treatment::appliedAt),
                        house.residents().stream()
                                .flatMap(resident -> resident.state().placements().stream())
                                .map(placement -> placement.fromInclusive()))
                .flatMap(each -> each);
    }

    private List<Stretch> stretches(WarningKind kind, LongFunction<Sign> signs) {
        return kind.hysteresis().stretches(fromHour, untilHour, signs);
    }

    private static boolean isLasting(Stretch stretch) {
        return stretch.untilHour() == Stretch.LASTING;
    }

    private static @Nullable Instant ended(Stretch stretch) {
        return isLasting(stretch) ? null : HourlySeries.startOf(stretch.untilHour());
    }

    private void add(
            WarningKind kind,
            @Nullable String batch,
            @Nullable Measured measured,
            Stretch stretch,
            @Nullable Instant until) {
        Set<String> concerned = new TreeSet<>(stretch.batches());
        if (until == null) {
            concerned.retainAll(ResidentBatches.names(residents.at(now)));
        }
        boolean allLeft = concerned.isEmpty() && !stretch.batches().isEmpty();
        Sign worst = stretch.worst();
        warnings.add(new Warning(
                kind,
                house.house(),
                batch,
                measured,
                HourlySeries.startOf(stretch.sinceHour()),
                HourlySeries.startOf(stretch.raisedHour() + 1),
                allLeft ? lastOneLeft(stretch) : until,
                Double.isNaN(worst.value()) ? null : worst.value(),
                Double.isNaN(worst.limit()) ? null : worst.limit(),
                worst.unit(),
                List.copyOf(allLeft ? new TreeSet<>(stretch.batches()) : concerned)));
    }

    /** End of the last hour at whose beginning one of them was there. */
    private Instant lastOneLeft(Stretch stretch) {
        long hour = untilHour;
        while (hour > stretch.raisedHour() + 1
                && residents.at(hour - 1).stream()
                        .noneMatch(there -> stretch.batches().contains(there.batch()))) {
            hour--;
        }
        return HourlySeries.startOf(hour);
    }
}
