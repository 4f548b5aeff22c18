package rootcast.warnings;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.LongFunction;
import org.jspecify.annotations.Nullable;
import rootcast.climate.HourlySeries;
import rootcast.rounds.Rhythm;
import rootcast.warnings.Hysteresis.Stretch;

/**
 * The warnings that stood in a house over a span of hours.
 *
 * <p>The same hours and facts give the same warnings, whenever and in whatever order they came in. A span should begin well
 * before the hours of interest: what went on before it is not known, a warning that began there starts with it.
 */
public final class Watch {

    private final Watched house;
    private final long fromHour;
    private final long untilHour;
    private final List<Warning> warnings = new ArrayList<>();

    private Watch(Watched house, long fromHour, long untilHour) {
        this.house = house;
        this.fromHour = fromHour;
        this.untilHour = untilHour;
    }

    /** @param untilExclusive the hour that is still running, or an earlier one */
    public static List<Warning> over(Watched house, Rhythm rhythm, long fromInclusive, long untilExclusive) {
        Watch watch = new Watch(house, fromInclusive, untilExclusive);
        ResidentBatches residents = new ResidentBatches(house, fromInclusive, untilExclusive);
        watch.climate(new ClimateRules(house, residents));
        watch.care(new CareRules(house, residents, rhythm, fromInclusive, untilExclusive));
        return watch.warnings;
    }

    private void climate(ClimateRules rules) {
        find(WarningKind.DRY_DOWN, null, null, rules::dryDown);
        find(WarningKind.MEDIUM_DRY, null, null, rules::mediumDry);
        find(WarningKind.OVER_MISTING, null, null, rules::overMisting);
        find(WarningKind.MEDIUM_SATURATED, null, null, rules::mediumSaturated);
        find(WarningKind.MEDIUM_COLD, null, null, rules::mediumCold);
        find(WarningKind.AIR_COLD, null, null, rules::airCold);
        find(WarningKind.LIGHT_HIGH, null, null, rules::lightHigh);
        find(WarningKind.AIR_WET, null, null, rules::airWet);
        find(WarningKind.NIGHT_MIST_ON, null, null, rules::nightMistOn);
    }

    private void care(CareRules rules) {
        find(WarningKind.SCOUTING_MISSED, null, null, rules::scoutingMissed);
        for (Measured measured : Measured.values()) {
            if (measured.isExpectedEveryHour()) {
                find(WarningKind.NO_READINGS, null, measured, hour -> rules.noReadings(measured, hour));
            }
        }
        TreeSet<String> batches = new TreeSet<>();
        house.residents()
                .forEach(resident -> batches.add(resident.state().batch().id()));
        for (String batch : batches) {
            find(WarningKind.MIST_NOT_WEANED, batch, null, hour -> rules.mistNotWeaned(batch, hour));
            find(WarningKind.NO_FEED, batch, null, hour -> rules.noFeed(batch, hour));
            find(WarningKind.PREVENTION_MISSED, batch, null, hour -> rules.preventionMissed(batch, hour));
        }
    }

    private void find(WarningKind kind, @Nullable String batch, @Nullable Measured measured, LongFunction<Sign> signs) {
        for (Stretch stretch : kind.hysteresis().stretches(fromHour, untilHour, signs)) {
            Sign worst = stretch.worst();
            warnings.add(new Warning(
                    kind,
                    house.house(),
                    batch,
                    measured,
                    HourlySeries.startOf(stretch.sinceHour()),
                    HourlySeries.startOf(stretch.raisedHour() + 1),
                    stretch.untilHour() == Stretch.LASTING ? null : HourlySeries.startOf(stretch.untilHour()),
                    Double.isNaN(worst.value()) ? null : worst.value(),
                    Double.isNaN(worst.limit()) ? null : worst.limit(),
                    worst.unit(),
                    List.copyOf(new TreeSet<>(stretch.batches()))));
        }
    }
}
