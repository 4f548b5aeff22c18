package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.availability.LotOfBatch;
import rootcast.availability.SupplyLot;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.outlook.OutlookModel;
import rootcast.site.Site;

/**
 * Whether the outlook is right about how sure it is, on 2 000 batches of four businesses whose truth it does not know.
 *
 * <p>The profile starts with days 20 % wrong and cardinals that are not the truth's, and is learned from 300 batches
 * of the same business that were finished before. Each later batch is then forecast from what had been seen 14, 7 and 3 days before it was truly
 * ready.
 */
class HonestDatesTest {

    /** Businesses of their own weather, houses and people. */
    private static final long[] SEEDS = {1, 2, 3, 4};

    private static final int HOLD_DAYS = 10;
    private static final Site ANYWHERE = new Site("any", "Any", ZoneOffset.UTC, DayOfWeek.MONDAY);
    private static final int TAUGHT = 300;
    private static final int FORECAST = 500;
    private static final int[] LEADS = {14, 7, 3};
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);

    private record Case(int leadDays, TrueBusiness.Batch batch, Outlook outlook, double calendarErrorDays) {

        double errorDays() {
            return days(outlook.readyAt().p50(), batch.ready());
        }

        boolean isInside() {
            return !batch.ready().isBefore(outlook.readyAt().p10())
                    && !batch.ready().isAfter(outlook.readyAt().p90());
        }
    }

    private static final List<Case> CASES = new ArrayList<>();

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / 86_400_000.0;
    }

    @BeforeAll
    static void forecastAll() {
        for (long seed : SEEDS) {
            forecast(new TrueBusiness(seed, TAUGHT + FORECAST + 160));
        }
    }

    private static void forecast(TrueBusiness business) {
        List<TrueBusiness.Batch> taught = business.batches.subList(0, TAUGHT);
        Instant learnedAt = taught.stream()
                .map(TrueBusiness.Batch::seenReadyAt)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        CropProfile profile =
                business.calibrated(wrong(), business.learned(wrong(), taught, learnedAt), taught, ANYWHERE, learnedAt);
        double calendarDays = taught.stream()
                .mapToDouble(batch -> days(batch.stuckAt(), batch.ready()))
                .average()
                .orElseThrow();
        List<TrueBusiness.Batch> forecast = business.batches.stream()
                .filter(batch -> batch.stuckAt().isAfter(learnedAt))
                .limit(FORECAST)
                .toList();
        assertThat(forecast).hasSize(FORECAST);
        HouseCurves curves = business.curves(learnedAt);
        record Origin(Instant at, int leadDays, TrueBusiness.Batch batch) {}
        forecast.stream()
                .flatMap(batch -> Arrays.stream(LEADS)
                        .mapToObj(lead -> new Origin(batch.ready().minus(Duration.ofDays(lead)), lead, batch)))
                .sorted(Comparator.comparing(Origin::at))
                .forEach(origin -> {
                    curves.advanceTo(origin.at());
                    Outlook outlook = OutlookModel.outlook(origin.batch().by(origin.at()), profile, TRAY, curves);
                    double calendar = days(
                            origin.batch().stuckAt().plusMillis(Math.round(calendarDays * 86_400_000)),
                            origin.batch().ready());
                    CASES.add(new Case(origin.leadDays(), origin.batch(), outlook, calendar));
                });
    }

    private static CropProfile wrong() {
        return new CropProfile(
                List.of(stage(Stage.STICK, 9.6, 8, 27), stage(Stage.CALLUS, 12, 10, 26), stage(Stage.ROOT, 13, 5, 25)),
                0.12,
                HOLD_DAYS);
    }

    private static StageProfile stage(Stage stage, double days, double minC, double optimumC) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.BETA, minC, optimumC, 36, 22), 0.965, 60);
    }

    private static List<Case> at(int leadDays) {
        return CASES.stream().filter(each -> each.leadDays == leadDays).toList();
    }

    @ParameterizedTest(name = "{0} days before")
    @ValueSource(ints = {14, 7, 3})
    void fourInFiveAreReadyWithinTheirRange(int leadDays) {
        double inside = at(leadDays).stream()
                .mapToInt(each -> each.isInside() ? 1 : 0)
                .average()
                .orElseThrow();
        double bias =
                at(leadDays).stream().mapToDouble(Case::errorDays).average().orElseThrow();
        double width = at(leadDays).stream()
                .mapToDouble(each -> days(
                        each.outlook.readyAt().p10(), each.outlook.readyAt().p90()))
                .average()
                .orElseThrow();
        Told.line(String.format(
                Locale.ROOT,
                "lead %d: inside 80 %% range %.3f, mean error %.2f d, width %.2f d, MAE %.3f",
                leadDays,
                inside,
                bias,
                width,
                at(leadDays).stream()
                        .mapToDouble(e -> Math.abs(e.errorDays()))
                        .average()
                        .orElseThrow()));

        // What is wanted of 80 %. A week ahead 0.764 hold: too narrow by what the model does not know, not by chance.
        assertThat(inside).as("seeds %s", Arrays.toString(SEEDS)).isBetween(0.76, 0.84);
    }

    @Test
    void aWeekBeforeTheDateIsADayOutAtMostAndFarBetterThanTheCalendar() {
        double error = at(7).stream()
                .mapToDouble(each -> Math.abs(each.errorDays()))
                .average()
                .orElseThrow();
        double calendar = at(7).stream()
                .mapToDouble(each -> Math.abs(each.calendarErrorDays))
                .average()
                .orElseThrow();
        Told.line(String.format(Locale.ROOT, "mean absolute error at 7 days %.3f d, calendar %.3f d", error, calendar));

        assertThat(error).as("seeds %s", Arrays.toString(SEEDS)).isLessThanOrEqualTo(1.0);
        assertThat(error).as("seeds %s", Arrays.toString(SEEDS)).isLessThanOrEqualTo(0.6 * calendar);
    }

    /**
     * On the first day that offers most of the batch's trays at 90 %, or one of the four days after it: whether so many could
     * be filled with plants that were alive, and with plants that were through with rooting too and not past their day.
     */
    @Test
    void traysPromisedAtNineInTenAreThereInNineCasesOfTen() {
        int promised = 0;
        int kept = 0;
        int alive = 0;
        int rooted = 0;
        double stated = 0;
        for (Case each : CASES) {
            SupplyLot lot =
                    LotOfBatch.of(each.batch.id(), each.outlook, ANYWHERE).orElseThrow();
            LocalDate day = ANYWHERE.dayOf(each.outlook.asOf()).plusDays(1);
            LocalDate last = lot.usableUntilInclusive(0.9);
            int most = each.outlook.saleableTrays().p50();
            while (last != null && lot.traysAt(day, 0.9) < 0.8 * most && day.isBefore(last)) {
                day = day.plusDays(1);
            }
            day = day.plusDays(Math.floorMod(each.batch.id().hashCode(), 5));
            int trays = lot.traysAt(day, 0.9);
            if (trays > 0) {
                promised++;
                stated += each.outlook.usable().at(ANYWHERE.startOf(day)).applyAsDouble(trays);
                int plants = trays * TRAY.saleCount();
                boolean isAlive = each.batch.alive(2) >= plants;
                boolean isReady = !each.batch.ready().isAfter(ANYWHERE.startOf(day));
                kept += isReady && isAlive ? 1 : 0;
                alive += isAlive ? 1 : 0;
                rooted += each.batch.usable(ANYWHERE.startOf(day), HOLD_DAYS) >= plants ? 1 : 0;
            }
        }
        String shares = String.format(
                Locale.ROOT,
                "promised at 0.9, of %d: so many alive %.3f, and nine in ten ready %.3f, so many alive, rooted and not past %.3f where %.3f was stated",
                promised,
                (double) alive / promised,
                (double) kept / promised,
                (double) rooted / promised,
                stated / promised);
        Told.line(shares);

        assertThat(promised).isGreaterThan(CASES.size() * 9 / 10);
        assertThat((double) rooted / promised)
                .as("%s, seeds %s", shares, Arrays.toString(SEEDS))
                .isBetween(0.88, 0.93);
    }
}
