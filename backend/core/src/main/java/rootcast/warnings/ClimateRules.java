package rootcast.warnings;

import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rootcast.climate.HourlySeries;
import rootcast.climate.MoistAir;
import rootcast.crop.Phase;
import rootcast.rounds.Care;
import rootcast.warnings.ResidentBatches.Resident;

/**
 * What the climate of one hour says, one rule a method.
 *
 * <p>Where batches of several phases stand together the tightest limit of those concerned holds. Night is 20:00 to 06:00
 * by the site's clock, half-open.
 */
final class ClimateRules {

    private static final LocalTime NIGHT_FROM = LocalTime.of(20, 0);
    private static final LocalTime NIGHT_UNTIL = LocalTime.of(6, 0);

    /** Margins: how far inside its limit a value must be before it counts as fine. */
    private static final double MARGIN_C = 0.3;

    private static final double MARGIN_PERCENT = 2;
    private static final double MARGIN_KPA = 0.05;
    private static final double MARGIN_LEVEL = 0.1;
    private static final double MARGIN_MS = 0.05;
    private static final double MARGIN_LIGHT_SHARE = 0.05;

    /** A level is a whole number by hand; a probe mapped to it may stray by half without being another level. */
    private static final double HALF_LEVEL = 0.5;

    /** For how long a moisture level seen by hand is taken to hold. */
    private static final int LEVEL_HOLDS_HOURS = 24;

    private static final int EC_HOLDS_HOURS = 7 * 24;

    private static final int DAY_HOURS = 24;
    private static final double SECONDS_PER_HOUR = 3_600;

    private final HouseHours hours;
    private final ResidentBatches residents;
    private final ZoneId zone;
    private final Map<String, List<Care>> levelsOf;
    private final List<Care> ecChecks;

    ClimateRules(Watched house, ResidentBatches residents) {
        hours = house.hours();
        this.residents = residents;
        zone = house.site().zone();
        levelsOf = house.cares().stream()
                .filter(care -> care.level() != null && care.batch() != null)
                .collect(Collectors.groupingBy(Care::batch));
        ecChecks = house.cares().stream()
                .filter(care -> care.ecMsPerCm() != null && care.house().equals(house.house()))
                .toList();
    }

    /** Cuttings without roots take up next to nothing: dry air in the days of full mist dries them down. */
    Sign dryDown(long hour) {
        List<Resident> cuttings = residents.at(hour, resident -> resident.phase() == Phase.STICKING);
        if (cuttings.isEmpty()) {
            return Sign.FINE;
        }
        double humidityPercent = hours.at(Measured.HUMIDITY_PERCENT, hour);
        double mostKpa = ResidentBatches.least(
                cuttings, resident -> resident.asks().deficitKpa().most());
        double leastPercent = ResidentBatches.most(
                cuttings, resident -> resident.asks().humidityPercent().least());
        Sign deficit = Sign.above(deficitKpa(hour), mostKpa, MARGIN_KPA, Sign.KPA, ResidentBatches.names(cuttings));
        return deficit.or(Sign.below(
                humidityPercent, leastPercent, MARGIN_PERCENT, Sign.PERCENT, ResidentBatches.names(cuttings)));
    }

    Sign overMisting(long hour) {
        List<Resident> misted = residents.at(hour, Resident::isUnderMist);
        if (misted.isEmpty()) {
            return Sign.FINE;
        }
        return tooHumid(misted, hour).or(tooWet(misted, hour));
    }

    /** Leaves that never dry rot with roots as without; who is under mist is asked about by {@link #overMisting}. */
    Sign airWet(long hour) {
        List<Resident> dryGrown = residents.at(hour, resident -> !resident.isUnderMist());
        return dryGrown.isEmpty() ? Sign.FINE : tooHumid(dryGrown, hour);
    }

    private Sign tooHumid(List<Resident> concerned, long hour) {
        return Sign.above(
                hours.at(Measured.HUMIDITY_PERCENT, hour),
                ResidentBatches.least(
                        concerned, resident -> resident.asks().humidityPercent().most()),
                MARGIN_PERCENT,
                Sign.PERCENT,
                ResidentBatches.names(concerned));
    }

    Sign mediumSaturated(long hour) {
        List<Resident> rooting =
                residents.at(hour, resident -> resident.phase() == Phase.ROOTING || resident.phase() == Phase.FILLING);
        return rooting.isEmpty() ? Sign.FINE : tooWet(rooting, hour);
    }

    private Sign tooWet(List<Resident> concerned, long hour) {
        Sign worst = Sign.SILENT;
        for (Resident resident : concerned) {
            double most = resident.asks().moistureLevel().most() + HALF_LEVEL;
            worst = worst.or(
                    Sign.above(level(resident, hour), most, MARGIN_LEVEL, Sign.LEVEL, List.of(resident.batch())));
        }
        return worst;
    }

    Sign mediumDry(long hour) {
        List<Resident> present = residents.at(hour);
        Sign worst = present.isEmpty() ? Sign.FINE : Sign.SILENT;
        for (Resident resident : present) {
            double least = resident.asks().moistureLevel().least() - HALF_LEVEL;
            worst = worst.or(
                    Sign.below(level(resident, hour), least, MARGIN_LEVEL, Sign.LEVEL, List.of(resident.batch())));
        }
        return worst;
    }

    /** By the house's probe, or else by what was last measured by hand within a week. */
    Sign leached(long hour) {
        List<Resident> rooted =
                residents.at(hour, resident -> resident.phase() == Phase.FILLING || resident.phase() == Phase.TONING);
        if (rooted.isEmpty()) {
            return Sign.FINE;
        }
        double probe = hours.at(Measured.EC_MS_PER_CM, hour);
        double value = Double.isNaN(probe)
                ? newest(ecChecks, hour, EC_HOLDS_HOURS).map(Care::ecMsPerCm).orElse(Double.NaN)
                : probe;
        double least = ResidentBatches.most(
                rooted, resident -> resident.asks().mediumEcMsPerCm().least());
        return Sign.below(value, least, MARGIN_MS, Sign.MS_PER_CM, ResidentBatches.names(rooted));
    }

    Sign mediumCold(long hour) {
        List<Resident> present = residents.at(hour);
        if (present.isEmpty()) {
            return Sign.FINE;
        }
        double dayLightMol = dayLightMol(hour);
        double leastC = ResidentBatches.most(present, resident -> leastMediumC(resident, dayLightMol));
        List<Resident> concerned = present.stream()
                .filter(resident -> leastMediumC(resident, dayLightMol) == leastC)
                .toList();
        return Sign.below(
                hours.at(Measured.MEDIUM_C, hour), leastC, MARGIN_C, Sign.CELSIUS, ResidentBatches.names(concerned));
    }

    private static double leastMediumC(Resident resident, double dayLightMol) {
        double leastC = resident.asks().mediumC().least();
        boolean unrooted = resident.phase().compareTo(Phase.FILLING) < 0;
        boolean lowLight = dayLightMol < resident.recipe().lowLightMol();
        return unrooted && lowLight ? Math.max(leastC, resident.recipe().lowLightMediumLeastC()) : leastC;
    }

    Sign airCold(long hour) {
        if (!isNight(hour)) {
            return Sign.SILENT;
        }
        List<Resident> present = residents.at(hour);
        double leastC = ResidentBatches.most(
                present, resident -> resident.asks().nightAirC().least());
        return present.isEmpty()
                ? Sign.FINE
                : Sign.below(
                        hours.at(Measured.AIR_C, hour), leastC, MARGIN_C, Sign.CELSIUS, ResidentBatches.names(present));
    }

    Sign lightHigh(long hour) {
        List<Resident> present = residents.at(hour);
        if (present.isEmpty()) {
            return Sign.FINE;
        }
        double mostUmol = ResidentBatches.least(
                present, resident -> resident.asks().lightUmol().most());
        List<Resident> concerned = present.stream()
                .filter(resident -> resident.asks().lightUmol().most() == mostUmol)
                .toList();
        return Sign.above(
                hours.at(Measured.LIGHT_UMOL, hour),
                mostUmol,
                mostUmol * MARGIN_LIGHT_SHARE,
                Sign.UMOL,
                ResidentBatches.names(concerned));
    }

    /** Where cuttings still need mist at night it runs for them: that is a clash of recipes, and not this mistake. */
    Sign nightMistOn(long hour) {
        if (!isNight(hour)) {
            return Sign.SILENT;
        }
        List<Resident> present = residents.at(hour);
        if (present.isEmpty() || present.stream().anyMatch(Resident::isUnderMist)) {
            return Sign.FINE;
        }
        return tooHumid(present, hour);
    }

    /** Light of the day that ends with this hour, mol·m⁻²; not a number unless every hour was measured. */
    private double dayLightMol(long hour) {
        double sum = 0;
        for (long each = hour - DAY_HOURS + 1; each <= hour; each++) {
            sum += hours.at(Measured.LIGHT_UMOL, each) * SECONDS_PER_HOUR / 1e6;
        }
        return sum;
    }

    private double deficitKpa(long hour) {
        double airC = hours.at(Measured.AIR_C, hour);
        double humidityPercent = hours.at(Measured.HUMIDITY_PERCENT, hour);
        return humidityPercent > 0 && humidityPercent <= 100 ? MoistAir.deficitKpa(airC, humidityPercent) : Double.NaN;
    }

    /** By the house's probe, or else by what was last seen of the batch within a day. */
    private double level(Resident resident, long hour) {
        double probe = hours.at(Measured.MOISTURE_LEVEL, hour);
        if (!Double.isNaN(probe)) {
            return probe;
        }
        return newest(levelsOf.getOrDefault(resident.batch(), List.of()), hour, LEVEL_HOLDS_HOURS)
                .map(care -> (double) care.level())
                .orElse(Double.NaN);
    }

    private static Optional<Care> newest(List<Care> cares, long hour, int holdsHours) {
        return cares.stream()
                .filter(care ->
                        HourlySeries.hourOf(care.at()) <= hour && HourlySeries.hourOf(care.at()) > hour - holdsHours)
                .max(Comparator.comparing(Care::at));
    }

    /** Whether a value of this unit is known by hand alone in the hour, so that one look says how it stands now. */
    boolean isByHand(String unit, long hour) {
        return switch (unit) {
            case Sign.LEVEL -> Double.isNaN(hours.at(Measured.MOISTURE_LEVEL, hour));
            case Sign.MS_PER_CM -> Double.isNaN(hours.at(Measured.EC_MS_PER_CM, hour));
            default -> false;
        };
    }

    private boolean isNight(long hour) {
        LocalTime clock = HourlySeries.startOf(hour).atZone(zone).toLocalTime();
        return !clock.isBefore(NIGHT_FROM) || clock.isBefore(NIGHT_UNTIL);
    }
}
