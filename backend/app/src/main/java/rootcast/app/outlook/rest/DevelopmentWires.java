package rootcast.app.outlook.rest;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rootcast.app.outlook.BatchInTime;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.ExplanationModel;
import rootcast.outlook.Outlook;
import rootcast.outlook.PlannedPoint;

/** The snapshot behind a batch's dates: temperature by the hour and progress, from sticking to the late ready date. */
final class DevelopmentWires {

    private static final Duration STEP = Duration.ofHours(6);
    private static final Duration FURTHEST = Duration.ofDays(60);
    private static final Duration MARGIN = Duration.ofDays(1);
    private static final int PLAN_STEP_HOURS = 6;

    private DevelopmentWires() {}

    /**
     * @param progress in stages done: 1 is callused, 2 rooted, 3 ready
     * @param plan     the same, as planned when the batch was stuck
     */
    record Development(
            String batch,
            Instant asOf,
            List<HourWire> hours,
            List<ProgressWire> progress,
            List<PlanWire> plan,
            List<ReachedWire> stages,
            List<LookWire> looks) {}

    /** @param source measured, filled or forecast */
    record HourWire(Instant at, double mediumC, String house, String source) {}

    record ProgressWire(Instant at, double p10, double p50, double p90) {}

    record PlanWire(Instant at, double progress) {}

    record ReachedWire(Stage stage, Instant reachedAt) {}

    /** Of {@code cells} looked at, {@code reached} had reached the stage. */
    record LookWire(Instant at, Stage stage, int cells, int reached) {}

    static Development of(BatchInTime batch) {
        BatchState state = batch.snapshot().state();
        Instant until = end(batch);
        return new Development(
                batch.snapshot().batch().id(),
                batch.houses().asOf(),
                hours(batch, until),
                batch.made().progress(batch.snapshot().batch().stuckAt(), until, STEP).stream()
                        .map(point -> new ProgressWire(point.at(), point.p10(), point.p50(), point.p90()))
                        .toList(),
                plan(batch, until),
                state.reachedAt().entrySet().stream()
                        .map(each -> new ReachedWire(each.getKey(), each.getValue()))
                        .sorted(java.util.Comparator.comparing(ReachedWire::stage))
                        .toList(),
                state.looks().stream()
                        .map(look -> new LookWire(look.at(), look.stage(), look.cells(), look.reached()))
                        .toList());
    }

    private static List<PlanWire> plan(BatchInTime batch, Instant until) {
        List<PlannedPoint> points = ExplanationModel.plan(
                batch.made().history(), batch.plannedProfile().profile(), batch.houses());
        List<PlanWire> plan = new ArrayList<>();
        for (int i = 0; i < points.size(); i++) {
            PlannedPoint point = points.get(i);
            boolean isDrawn = i % PLAN_STEP_HOURS == 0 || i == points.size() - 1;
            if (isDrawn && !point.at().isAfter(until)) {
                plan.add(new PlanWire(point.at(), point.progress()));
            }
        }
        return plan;
    }

    private static Instant end(BatchInTime batch) {
        Instant asOf = batch.houses().asOf();
        Outlook outlook = batch.snapshot().outlook();
        if (outlook == null) {
            return asOf;
        }
        Instant furthest = asOf.plus(FURTHEST);
        Instant late = outlook.readyAt().p90();
        Instant end = late.equals(DateDistribution.NEVER) || late.isAfter(furthest) ? furthest : late;
        return (end.isBefore(asOf) ? asOf : end).plus(MARGIN);
    }

    private static List<HourWire> hours(BatchInTime batch, Instant until) {
        double referenceC =
                batch.profile().profile().of(Stage.STICK).cardinals().referenceC();
        List<BatchState.Placement> placements = batch.snapshot().state().placements();
        List<HourWire> hours = new ArrayList<>();
        int placement = 0;
        long first = HourlySeries.hourOf(batch.snapshot().batch().stuckAt());
        for (long hour = first; hour < HourlySeries.hourOf(until); hour++) {
            Instant at = HourlySeries.startOf(hour);
            while (placement + 1 < placements.size()
                    && !placements.get(placement + 1).fromInclusive().isAfter(at)) {
                placement++;
            }
            String house = placements.get(placement).house();
            FilledSeries filled = batch.houses().climateOf(house);
            hours.add(new HourWire(at, filled.celsius(hour, referenceC), house, source(filled, hour)));
        }
        return hours;
    }

    private static String source(FilledSeries filled, long hour) {
        if (hour >= filled.nextHour()) {
            return "forecast";
        }
        return filled.sourceOf(hour) == HourSource.MEASURED ? "measured" : "filled";
    }
}
