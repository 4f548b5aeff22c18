package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.availability.CellSupply;
import rootcast.availability.KeptTogether;
import rootcast.availability.LotOfBatch;
import rootcast.availability.Promise;
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
 * Whether batches of a house are all in time together as often as is said, in businesses whose truth the model does not know
 * ({@link TrueBusiness}): each week all that each batch offers at 90 % is promised, and put together with what the others of its house offer.
 */
class KeptTogetherInABusinessTest {

    /** Taken before they were first run. */
    private static final long[] SEEDS = {51, 52, 53, 54, 55, 56};

    private static final int TAUGHT = 60;
    private static final int LIVE = 240;
    private static final int HOLD_DAYS = 10;
    private static final double CONFIDENCE = 0.9;
    private static final Site ANYWHERE = new Site("any", "Any", ZoneOffset.UTC, DayOfWeek.MONDAY);
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);

    /** Promises of one house made on one day: how likely it was said to be that all are kept, as if each failed for itself too, and whether they were. */
    private record Group(int lots, double stated, double apart, boolean kept) {}

    /** One promise, with the worlds in which it is kept and whether it was. */
    private record Case(BitSet worlds, boolean kept) {

        double chance() {
            return (double) worlds.cardinality() / KeptTogether.WORLDS;
        }
    }

    private static final List<Group> GROUPS = new ArrayList<>();

    @BeforeAll
    static void promiseAll() {
        for (long seed : SEEDS) {
            GROUPS.addAll(groups(new TrueBusiness(seed, TAUGHT + LIVE)));
        }
    }

    /** What one lot keeps has tests of its own; here it is whether several fail together no more, and no less, often than is said. */
    @ParameterizedTest(name = "{0} batches")
    @ValueSource(ints = {2, 3})
    void batchesOfAHouseFailTogetherAsOftenAsIsSaid(int lots) {
        double alone = mean(1, each -> each.kept ? 1 : 0);
        double kept = mean(lots, each -> each.kept ? 1 : 0);
        double stated = mean(lots, Group::stated);
        double apart = mean(lots, Group::apart);
        String shares = String.format(
                Locale.ROOT,
                "%d batches of one house, %d times: all kept %.3f where %.3f was stated, and %.3f had each failed for itself; one alone %.3f where %.3f was stated",
                lots,
                of(lots).size(),
                kept,
                stated,
                Math.pow(alone, lots),
                alone,
                mean(1, Group::stated));
        Told.line(shares);

        assertThat(of(lots)).hasSizeGreaterThan(500);
        assertThat(kept).as("%s, seeds %s", shares, Arrays.toString(SEEDS)).isGreaterThan(stated - 0.04);
        assertThat(kept / Math.pow(alone, lots))
                .as("%s, seeds %s", shares, Arrays.toString(SEEDS))
                .isBetween(stated / apart - 0.04, stated / apart + 0.04);
    }

    private static List<Group> of(int lots) {
        return GROUPS.stream().filter(each -> each.lots == lots).toList();
    }

    private static double mean(int lots, ToDoubleFunction<Group> figure) {
        return of(lots).stream().mapToDouble(figure).average().orElseThrow();
    }

    private static List<Group> groups(TrueBusiness business) {
        List<TrueBusiness.Batch> taught = business.batches.subList(0, TAUGHT);
        Instant learnedAt = taught.stream()
                .map(TrueBusiness.Batch::seenReadyAt)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        CropProfile profile = business.learned(stated(), taught, learnedAt);
        HouseCurves curves = business.curves(learnedAt);
        List<Group> groups = new ArrayList<>();
        Instant end = business.batches.get(business.batches.size() - 1).stuckAt();
        for (Instant at = learnedAt.plus(Duration.ofDays(1)); at.isBefore(end); at = at.plus(Duration.ofDays(7))) {
            Instant now = at;
            curves.advanceTo(now);
            Map<Integer, List<Case>> byHouse = business.batches.stream()
                    .filter(batch ->
                            batch.stuckAt().isBefore(now) && batch.seenReadyAt().isAfter(now))
                    .flatMap(batch ->
                            promised(batch, OutlookModel.outlook(batch.by(now), profile, TRAY, curves)).stream()
                                    .map(each -> Map.entry(batch.house(), each)))
                    .collect(Collectors.groupingBy(
                            Map.Entry::getKey,
                            TreeMap::new,
                            Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
            byHouse.values().forEach(cases -> {
                for (int one = 0; one < cases.size(); one++) {
                    groups.add(group(cases.subList(one, one + 1)));
                    for (int other = one + 1; other < cases.size(); other++) {
                        groups.add(group(List.of(cases.get(one), cases.get(other))));
                    }
                    if (one + 2 < cases.size()) {
                        groups.add(group(cases.subList(one, one + 3)));
                    }
                }
            });
        }
        return groups;
    }

    private static Group group(List<Case> cases) {
        BitSet all = (BitSet) cases.get(0).worlds.clone();
        cases.forEach(each -> all.and(each.worlds));
        return new Group(
                cases.size(),
                (double) all.cardinality() / KeptTogether.WORLDS,
                cases.stream().mapToDouble(Case::chance).reduce(1, (one, other) -> one * other),
                cases.stream().allMatch(Case::kept));
    }

    /** All that the batch offers on the first day on which it offers most of its trays; nothing if that is not within 15 days. */
    private static List<Case> promised(TrueBusiness.Batch batch, Outlook outlook) {
        SupplyLot lot = LotOfBatch.of(batch.id(), outlook, ANYWHERE).orElseThrow();
        LocalDate today = ANYWHERE.dayOf(outlook.asOf());
        int most = outlook.saleableTrays().p50();
        for (LocalDate day = today.plusDays(1); day.isBefore(today.plusDays(15)); day = day.plusDays(1)) {
            int trays = lot.traysAt(day, CONFIDENCE);
            if (trays >= 0.8 * most) {
                Promise promise = new Promise("order", 1, day, trays, CONFIDENCE, 1);
                KeptTogether kept = KeptTogether.of(new CellSupply(List.of(lot), List.of(promise), today), "crop");
                boolean isThere = batch.usable(ANYWHERE.startOf(day), HOLD_DAYS) >= trays * TRAY.saleCount();
                return List.of(new Case(kept.worldsOf(promise), isThere));
            }
        }
        return List.of();
    }

    private static CropProfile stated() {
        return new CropProfile(
                List.of(stage(Stage.STICK, 8, 8, 27), stage(Stage.CALLUS, 11, 10, 26), stage(Stage.ROOT, 12, 5, 25)),
                0.12,
                HOLD_DAYS);
    }

    private static StageProfile stage(Stage stage, double days, double minC, double optimumC) {
        var cardinals = new Cardinals(Cardinals.Form.BETA, minC, optimumC, 36, TrueBusiness.REFERENCE_C);
        return new StageProfile(stage, days, cardinals, 0.965, 60);
    }
}
