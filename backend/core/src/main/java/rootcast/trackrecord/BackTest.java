package rootcast.trackrecord;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.availability.Confidence;
import rootcast.availability.LotOfBatch;
import rootcast.availability.SupplyLot;
import rootcast.crop.CropProfile;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.outlook.OutlookModel;

/**
 * Every finished batch forecast from several days before it was ready, with what was known then.
 *
 * <p>Origins of all batches are walked in order of time over one set of curves, so each house's hours are summed once
 * whatever the number of batches. A batch joins the baselines' training when it is ready. An origin before sticking makes
 * no case.
 *
 * <p>Source: Tashman 2000, Int. J. Forecasting 16:437-450 (rolling origin); Czado, Gneiting and Held 2009, Biometrics
 * 65:1254-1261 (calibration where an outcome is known to an interval only).
 */
public final class BackTest {

    /** Days before a batch was ready from which it is forecast. */
    public static final List<Integer> LEADS_DAYS = List.of(1, 3, 5, 7, 10, 14, 21);

    /** What trays are promised at here. */
    public static final double CONFIDENCE = Confidence.USUAL;

    /** A date that never comes, at the temperatures expected, counts as this far away: an error must be a number. */
    private static final Duration HORIZON = Duration.ofDays(365);

    /** Probability too small to share out. */
    private static final double LEAST_SHARE = 1e-9;

    /** Equally likely dates that stand for the distribution in the ranked probability score. */
    private static final int EQUALLY_LIKELY = 20;

    private final PastHouses houses;
    private final Baselines baselines = new Baselines();
    private final List<Case> cases = new ArrayList<>();

    /** By batch, the numbers of its cases whose promise waits for the batch to be ready. */
    private final Map<String, List<Integer>> unscored = new HashMap<>();

    private BackTest(PastHouses houses) {
        this.houses = houses;
    }

    /** The houses as they were known at a moment. */
    public interface PastHouses {

        /** Asked for moments that never go back; a good answer is one set of curves brought up to the moment. */
        HouseCurves at(Instant moment);
    }

    private record Moment(Instant at, int leadDays, FinishedBatch batch) {

        /** Of one instant, batches that are ready come first: they were seen before anybody forecast others. */
        static final Comparator<Moment> ORDER = Comparator.comparing(Moment::at)
                .thenComparing(Moment::leadDays)
                .thenComparing(moment -> moment.batch.id());
    }

    /** The cases, ordered by origin, lead and batch. */
    public static List<Case> of(List<FinishedBatch> batches, PastHouses houses) {
        BackTest test = new BackTest(houses);
        batches.stream()
                .flatMap(batch -> Stream.concat(
                        Stream.of(new Moment(batch.seenReadyAt(), 0, batch)),
                        LEADS_DAYS.stream()
                                .map(lead -> new Moment(batch.readyAt().minus(Duration.ofDays(lead)), lead, batch))
                                .filter(moment -> moment.at.isAfter(batch.stuckAt()))))
                .sorted(Moment.ORDER)
                .forEach(test::walkTo);
        return List.copyOf(test.cases);
    }

    private void walkTo(Moment moment) {
        HouseCurves curves = houses.at(moment.at);
        CropProfile profile = moment.batch.then().profileAt(moment.at);
        if (moment.leadDays == 0) {
            baselines.learn(moment.batch, profile, curves);
            score(moment.batch, profile, curves);
        } else {
            Case forecast = forecast(moment, profile, curves);
            if (forecast.promised() != null) {
                unscored.computeIfAbsent(moment.batch.id(), any -> new ArrayList<>())
                        .add(cases.size());
            }
            cases.add(forecast);
        }
    }

    private Case forecast(Moment moment, CropProfile profile, HouseCurves curves) {
        FinishedBatch batch = moment.batch;
        BatchHistory history = batch.then().historyAt(moment.at);
        Outlook outlook = OutlookModel.outlook(history, profile, batch.format(), curves);
        DateDistribution ready = outlook.ready();
        Instant middling = date(ready, 0.5, moment.at);
        Instant calendar = baselines.byCalendar(batch, profile, moment.at);
        Instant degreeDays = baselines.byDegreeDays(batch, history.placements(), profile, curves);
        return new Case(
                batch.id(),
                batch.crop(),
                moment.leadDays,
                moment.at,
                batch.readyAt(),
                batch.seenReadyAt(),
                outlook.readyAt(),
                Baselines.days(middling, batch.readyAt()),
                inside(ready, 0.5, batch),
                inside(ready, 0.8, batch),
                inside(ready, 0.9, batch),
                pinballDays(ready, moment),
                crpsDays(ready, moment),
                Baselines.days(calendar, batch.readyAt()),
                Baselines.days(degreeDays, batch.readyAt()),
                promised(batch, outlook, moment.at),
                circumstances(batch, outlook, moment.at));
    }

    private static Case.Circumstances circumstances(FinishedBatch batch, Outlook then, Instant origin) {
        Set<String> expected =
                then.moves().stream().map(BatchHistory.Placement::house).collect(Collectors.toSet());
        boolean carriedUnsaid = batch.placements().stream()
                .filter(placement -> placement.fromInclusive().isAfter(origin))
                .anyMatch(placement -> !expected.contains(placement.house()));
        return new Case.Circumstances(
                batch.site().code(),
                batch.site().dayOf(batch.readyAt()),
                batch.notReadyAt().isBefore(batch.seenReadyAt()),
                carriedUnsaid);
    }

    static Instant horizon(Instant origin) {
        return origin.plus(HORIZON);
    }

    private static Instant date(DateDistribution ready, double probability, Instant origin) {
        Instant date = ready.quantile(probability);
        Instant horizon = horizon(origin);
        return date.isAfter(horizon) ? horizon : date;
    }

    /** Share of what the distribution gives to the moments it can have been that lies in its own middle. */
    private static double inside(DateDistribution ready, double share, FinishedBatch batch) {
        double low = (1 - share) / 2;
        double high = 1 - low;
        double from = ready.probabilityBy(batch.notReadyAt());
        double until = ready.probabilityBy(batch.seenReadyAt());
        if (until - from < LEAST_SHARE) {
            return from >= low && until <= high ? 1 : 0;
        }
        return Math.max(0, Math.min(until, high) - Math.max(from, low)) / (until - from);
    }

    private static double pinballDays(DateDistribution ready, Moment moment) {
        double outcome = moment.leadDays;
        return IntStream.of(1, 5, 9)
                .mapToDouble(tenths -> Scores.pinball(
                        tenths / 10.0, Baselines.days(moment.at, date(ready, tenths / 10.0, moment.at)), outcome))
                .average()
                .orElseThrow();
    }

    private static double crpsDays(DateDistribution ready, Moment moment) {
        double[] days = IntStream.range(0, EQUALLY_LIKELY)
                .mapToDouble(i -> Baselines.days(moment.at, date(ready, (i + 0.5) / EQUALLY_LIKELY, moment.at)))
                .toArray();
        return Scores.crps(days, moment.leadDays);
    }

    /** The first ship day after the origin on which a tray could be promised, and how many; not yet scored. */
    private static Case.@Nullable Promised promised(FinishedBatch batch, Outlook outlook, Instant origin) {
        Optional<SupplyLot> lot = LotOfBatch.of(batch.id(), outlook, batch.site());
        LocalDate last = lot.map(each -> each.usableUntilInclusive(CONFIDENCE)).orElse(null);
        LocalDate day = batch.site()
                .dayOf(origin)
                .with(TemporalAdjusters.next(batch.site().shipDay()));
        for (; last != null && !day.isAfter(last); day = day.plusWeeks(1)) {
            int trays = lot.orElseThrow().traysAt(day, CONFIDENCE);
            if (trays > 0) {
                return new Case.Promised(day, trays, false);
            }
        }
        return null;
    }

    /**
     * Whether what was promised was there. Of the plants that the books had on the ship day so many count as are through and
     * not past their day by the spread of the cells around the moment that the batch was ready: no record tells plant by plant.
     */
    private void score(FinishedBatch batch, CropProfile profile, HouseCurves curves) {
        BatchHistory history = batch.then().historyAt(batch.seenReadyAt());
        for (int open : unscored.getOrDefault(batch.id(), List.of())) {
            Case.Promised promised = cases.get(open).promised();
            Instant leaves = batch.site().startOf(promised.shipOn());
            double usable = batch.then().plantsThereAt(leaves)
                    * OutlookModel.usableShare(history, profile, curves, batch.readyAt(), leaves);
            boolean kept = usable >= (double) promised.trays() * batch.format().saleCount();
            cases.set(open, cases.get(open).scored(kept));
        }
        unscored.remove(batch.id());
    }
}
