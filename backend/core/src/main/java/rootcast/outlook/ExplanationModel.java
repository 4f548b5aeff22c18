package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.outlook.DateExplanation.Cause;
import rootcast.outlook.DateExplanation.Part;

/**
 * Takes a batch from its plan to the date expected now, one change at a time: the profile's version, the measured
 * temperatures day by day, the bridged hours, the hours to come, everything that was seen of its rate, and last what the crop's record says of such dates. Each
 * part is what its change moved the date by, so the parts add up; in another order they would share the effects of two
 * changes otherwise.
 */
public final class ExplanationModel {

    /** Days that moved the date most, to be named; the rest is summed up. */
    private static final int NAMED_DAYS = 6;

    /** A day that moved the date by less is not worth a line. */
    private static final double LEAST_NAMED_DAYS = 0.03;

    private final BatchOutlook outlook;
    private final HouseCurves houses;
    private final ZoneId zone;
    private final List<Part> parts = new ArrayList<>();
    private long date;

    private ExplanationModel(BatchOutlook outlook, HouseCurves houses, ZoneId zone) {
        this.outlook = outlook;
        this.houses = houses;
        this.zone = zone;
    }

    /**
     * @param planned the profile that was in force when the batch was stuck
     * @param zone    of the site, for the days
     */
    public static DateExplanation explain(BatchOutlook outlook, CropProfile planned, HouseCurves houses, ZoneId zone) {
        return new ExplanationModel(outlook, houses, zone).from(planned);
    }

    /** The plan's own course, for a plot. */
    public static List<PlannedPoint> plan(BatchHistory history, CropProfile planned, HouseCurves houses) {
        return new HourlyDates(history.stuckAt(), planned).progress(new Plan(history, houses));
    }

    private DateExplanation from(CropProfile planned) {
        BatchHistory history = outlook.history();
        Plan plan = new Plan(history, houses);
        date = new HourlyDates(history.stuckAt(), planned).ready(plan);
        Instant plannedAt = DateDistribution.instant(date);
        Outlook now = outlook.now();
        Instant readyAt = now.readyAt().p50();
        Instant byModel =
                now.byRecord() == null ? readyAt : now.byRecord().byModel().p50();
        if (date == NEVER || readyAt.equals(DateDistribution.NEVER)) {
            return new DateExplanation(plannedAt, readyAt, List.of());
        }
        HourlyDates dates = new HourlyDates(history.stuckAt(), outlook.profile());
        Actual actual = new Actual(outlook.expected(), houses);
        add(Cause.PROFILE_VERSION, dates.ready(plan));
        byDay(dates, plan, actual);
        long past = HourlySeries.hourOf(houses.asOf());
        add(
                Cause.GAP_FILLING,
                dates.ready((hour, stage, cardinals) ->
                        hour < past ? actual.celsius(hour, stage, cardinals) : plan.celsius(hour, stage, cardinals)));
        add(Cause.FORECAST, dates.ready(actual));
        add(Cause.RATE_SEEN, byModel.toEpochMilli());
        add(Cause.OWN_RECORD, readyAt.toEpochMilli());
        return new DateExplanation(plannedAt, readyAt, List.copyOf(parts));
    }

    private double movedTo(long next) {
        if (next == NEVER) {
            return 0; // what makes it never must be undone by a later change, which then carries both
        }
        double days = (next - date) / DateSpread.DAY_MILLIS;
        date = next;
        return days;
    }

    private void add(Cause cause, long next) {
        double days = movedTo(next);
        if (days != 0) {
            parts.add(new Part(cause, days, null, 0, Double.NaN, Double.NaN));
        }
    }

    private void byDay(HourlyDates dates, Plan plan, Actual actual) {
        List<Part> days = new ArrayList<>();
        measuredDays(actual).forEach((day, hours) -> {
            double moved =
                    movedTo(dates.ready((hour, stage, cardinals) -> hour <= hours.last() && actual.isMeasured(hour)
                            ? actual.celsius(hour, stage, cardinals)
                            : plan.celsius(hour, stage, cardinals)));
            days.add(new Part(Cause.TEMPERATURE, moved, day, 1, hours.meanC(actual), plan.mediumC(hours.last())));
        });
        days.sort(Comparator.comparingDouble((Part part) -> -Math.abs(part.days())));
        int named = 0;
        while (named < Math.min(NAMED_DAYS, days.size())
                && Math.abs(days.get(named).days()) >= LEAST_NAMED_DAYS) {
            named++;
        }
        days.subList(0, named).stream().sorted(Comparator.comparing(Part::on)).forEach(parts::add);
        List<Part> rest = days.subList(named, days.size());
        double moved = rest.stream().mapToDouble(Part::days).sum();
        if (moved != 0) {
            parts.add(new Part(
                    Cause.TEMPERATURE,
                    moved,
                    null,
                    rest.size(),
                    rest.stream().mapToDouble(Part::actualC).average().orElse(Double.NaN),
                    rest.stream().mapToDouble(Part::plannedC).average().orElse(Double.NaN)));
        }
    }

    /** Measured hours from sticking until now or ready, by the site's day, in order. */
    private Map<LocalDate, Hours> measuredDays(Actual actual) {
        Map<LocalDate, Hours> days = new LinkedHashMap<>();
        Instant until = outlook.history()
                .reached(StagePath.REACHED[StagePath.STAGES - 1])
                .orElse(houses.asOf());
        long end = HourlySeries.hourOf(until.isBefore(houses.asOf()) ? until : houses.asOf());
        for (long hour = HourlySeries.hourOf(outlook.history().stuckAt()); hour < end; hour++) {
            if (actual.isMeasured(hour)) {
                LocalDate day = HourlySeries.startOf(hour).atZone(zone).toLocalDate();
                days.computeIfAbsent(day, any -> new Hours(new ArrayList<>()))
                        .all
                        .add(hour);
            }
        }
        return days;
    }

    private record Hours(List<Long> all) {

        long last() {
            return all.get(all.size() - 1);
        }

        double meanC(Actual actual) {
            return all.stream().mapToDouble(actual::measuredC).average().orElseThrow();
        }
    }

    /**
     * The house at its set-point, or the stage's reference temperature; from a stage on at which batches of the house are usually
     * carried on, the next one's. A batch that was carried to another house once it was rooted, as to one for toning, is planned
     * at that house's set-point from rooting on: such a move is no delay. One that was carried before, or again later, leaves
     * its plan.
     */
    private static final class Plan implements HourlyDates.Course {
        private static final int LAST_STAGE = StagePath.STAGES - 1;

        /** °C by stage; null where nothing is set. */
        private final @Nullable Double[] mediumC = new Double[StagePath.STAGES];

        private final long movedAtHour;

        Plan(BatchHistory history, HouseCurves houses) {
            BatchHistory.Placement first = history.placements().get(0);
            String house = first.house();
            for (int stage = 0; stage < StagePath.STAGES; stage++) {
                UsualMove next = houses.usualMove(house);
                if (stage > 0 && next != null && next.reached() == StagePath.REACHED[stage - 1]) {
                    house = next.to();
                }
                mediumC[stage] = setpoint(house, first.fromInclusive(), houses);
            }
            Optional<BatchHistory.Placement> moved =
                    history.reached(StagePath.REACHED[LAST_STAGE - 1]).flatMap(rooted -> firstAfter(rooted, history));
            moved.ifPresent(to -> mediumC[LAST_STAGE] = setpoint(to.house(), to.fromInclusive(), houses));
            movedAtHour =
                    moved.map(to -> HourlySeries.hourOf(to.fromInclusive())).orElse(Long.MAX_VALUE);
        }

        private static Optional<BatchHistory.Placement> firstAfter(Instant rooted, BatchHistory history) {
            return history.placements().stream()
                    .skip(1)
                    .findFirst()
                    .filter(moved -> !moved.fromInclusive().isBefore(rooted));
        }

        private static @Nullable Double setpoint(String house, Instant at, HouseCurves houses) {
            return houses.planOf(house).mediumC(HourlySeries.hourOf(at));
        }

        /** Of the house that it was planned to stand in. */
        double mediumC(long hour) {
            Double planned = mediumC[hour < movedAtHour ? 0 : LAST_STAGE];
            return planned == null ? Double.NaN : planned;
        }

        @Override
        public double celsius(long hour, int stage, Cardinals cardinals) {
            Double planned = mediumC[stage];
            return planned == null ? cardinals.referenceC() : planned;
        }
    }

    /** The houses as they were and are expected to be. */
    private static final class Actual implements HourlyDates.Course {
        private final long[] fromHour;
        private final FilledSeries[] climates;

        Actual(BatchHistory history, HouseCurves houses) {
            int count = history.placements().size();
            fromHour = new long[count];
            climates = new FilledSeries[count];
            for (int i = 0; i < count; i++) {
                BatchHistory.Placement placement = history.placements().get(i);
                fromHour[i] = HourlySeries.hourOf(placement.fromInclusive());
                climates[i] = houses.climateOf(placement.house());
            }
        }

        private FilledSeries in(long hour) {
            int i = fromHour.length - 1;
            while (i > 0 && fromHour[i] > hour) {
                i--;
            }
            return climates[i];
        }

        boolean isMeasured(long hour) {
            return in(hour).sourceOf(hour) == HourSource.MEASURED;
        }

        double measuredC(long hour) {
            return in(hour).celsius(hour, Double.NaN);
        }

        @Override
        public double celsius(long hour, int stage, Cardinals cardinals) {
            return in(hour).celsius(hour, cardinals.referenceC());
        }
    }
}
