package rootcast.app.outlook.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.app.outlook.BatchInTime;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateExplanation;
import rootcast.outlook.ExplanationModel;
import rootcast.outlook.Outlook;

/**
 * Why a batch is ready when it is.
 *
 * @param plannedReadyAt null if it would never have been ready as planned
 * @param readyAt        the date seen, or the median expected; null if it never gets ready
 * @param differenceDays later if positive; null if either date is
 * @param rate           how fast the batch is believed to be, 1 being its crop's mean
 * @param daysDoubt      how far the profile's days may be out: standard deviation of their logarithm; it widens the range
 * @param calledShare    of the cells so many are through with a stage when it is called complete, as learned of the crop; 0.9 if no count showed otherwise
 * @param ownRecord      what finished batches that were foretold like this have made of the range; null if nothing yet
 * @param parts          add up to the difference
 */
record ExplanationWire(
        String batch,
        Instant asOf,
        @Nullable Instant plannedReadyAt,
        @Nullable Instant readyAt,
        @Nullable Double differenceDays,
        RateWire rate,
        int profileVersion,
        int plannedProfileVersion,
        double daysDoubt,
        double calledShare,
        @Nullable OwnRecordWire ownRecord,
        List<PartWire> parts) {

    record RateWire(double p10, double p50, double p90) {}

    /**
     * @param width   so many times as wide as the model's is the range of the ready date
     * @param batches that this rests on; those that share their weather count less
     */
    record OwnRecordWire(double width, double batches) {

        static @Nullable OwnRecordWire of(@Nullable Outlook outlook) {
            return outlook == null || outlook.byRecord() == null
                    ? null
                    : new OwnRecordWire(
                            outlook.byRecord().width(), outlook.byRecord().batches());
        }
    }

    /**
     * @param cause    profile-version, temperature, gap-filling, forecast, rate-seen or own-record
     * @param on       the day at the site, if it is one day's part
     * @param days     later if positive
     * @param actualC  mean medium temperature, if the part is one of temperature
     * @param plannedC what was planned; null where each stage's reference was
     */
    record PartWire(
            String cause,
            @Nullable LocalDate on,
            double days,
            @Nullable Double actualC,
            @Nullable Double plannedC,
            String text) {}

    static ExplanationWire of(BatchInTime batch, ZoneId zone) {
        DateExplanation explained =
                ExplanationModel.explain(batch.made(), batch.plannedProfile().profile(), batch.houses(), zone);
        var rate = batch.made().rate();
        boolean isDated = !explained.plannedAt().equals(DateDistribution.NEVER)
                && !explained.readyAt().equals(DateDistribution.NEVER);
        return new ExplanationWire(
                batch.snapshot().batch().id(),
                batch.houses().asOf(),
                DateRangeWire.seen(explained.plannedAt()),
                DateRangeWire.seen(explained.readyAt()),
                isDated ? explained.differenceDays() : null,
                new RateWire(rate.quantile(0.1), rate.quantile(0.5), rate.quantile(0.9)),
                batch.profile().number(),
                batch.plannedProfile().number(),
                batch.profile().profile().variation().daysDoubt(),
                batch.profile().profile().variation().calledShare(),
                OwnRecordWire.of(batch.snapshot().outlook()),
                explained.parts().stream().map(part -> part(part, batch)).toList());
    }

    private static PartWire part(DateExplanation.Part part, BatchInTime batch) {
        return new PartWire(
                part.cause().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                part.on(),
                part.days(),
                number(part.actualC()),
                number(part.plannedC()),
                text(part, batch));
    }

    private static @Nullable Double number(double value) {
        return Double.isNaN(value) ? null : value;
    }

    private static String text(DateExplanation.Part part, BatchInTime batch) {
        String effect = "%.1f days %s".formatted(Math.abs(part.days()), part.days() > 0 ? "later" : "earlier");
        String what = switch (part.cause()) {
            case PROFILE_VERSION ->
                "The crop profile is version %d now; the plan was made with version %d"
                        .formatted(
                                batch.profile().number(), batch.plannedProfile().number());
            case TEMPERATURE -> temperature(part);
            case GAP_FILLING -> "Hours without a reading, as they were filled in";
            case FORECAST -> "The hours to come are expected at another temperature than planned";
            case RATE_SEEN -> "Looks, stages seen and what the crop's batches usually do";
            case OWN_RECORD -> "Finished batches that were foretold like this were ready at another time than foretold";
        };
        return what + ": " + effect;
    }

    private static String temperature(DateExplanation.Part part) {
        String instead = Double.isNaN(part.plannedC())
                ? "each stage's reference temperature"
                : "%.1f °C".formatted(part.plannedC());
        String medium = "medium at %.1f °C instead of %s".formatted(part.actualC(), instead);
        return part.on() == null
                ? "%d other %s, %s on average"
                        .formatted(part.daysTaken(), part.daysTaken() == 1 ? "day" : "days", medium)
                : "On %s, %s".formatted(part.on(), medium);
    }
}
