package rootcast.app.rounds;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import rootcast.app.crop.CropRecipes;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.outlook.LiveBatches;
import rootcast.app.rounds.store.RoundCares;
import rootcast.app.rounds.store.WalkingOrder;
import rootcast.app.site.HousePlans;
import rootcast.app.site.StatedMove;
import rootcast.app.site.store.Places;
import rootcast.app.treatments.AppliedTreatment;
import rootcast.app.treatments.store.Treatments;
import rootcast.climate.HourlySeries;
import rootcast.ledger.BatchState;
import rootcast.outlook.Outlook;
import rootcast.rounds.BatchCare;
import rootcast.rounds.Care;
import rootcast.rounds.HouseCare;
import rootcast.rounds.HouseClimateFit;
import rootcast.rounds.MoveOn;
import rootcast.rounds.Rhythm;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Rounds;
import rootcast.rounds.Treatment;
import rootcast.site.House;
import rootcast.site.Site;
import rootcast.warnings.DryAir;
import rootcast.warnings.HouseHours;
import rootcast.warnings.Measured;

/** Brings together what the rounds of a site rest on. */
@ApplicationScoped
public class SiteCare {

    /** Records of houses are wanted at least from so long ago, however young their batches. */
    private static final Duration LOOK_BACK = Duration.ofDays(30);

    /** A reading of salts so young, from a probe or by hand, stands for a check of the round. */
    private static final long EC_HOURS = 7 * 24;

    @Inject
    Places places;

    @Inject
    LiveBatches batches;

    @Inject
    LiveCatalogue names;

    @Inject
    CropRecipes recipes;

    @Inject
    RoundCares cares;

    @Inject
    Treatments treatments;

    @Inject
    WalkingOrder walkingOrder;

    @Inject
    MeasuredHours hours;

    /**
     * A site at a moment.
     *
     * @param byHouse in walking order, also of houses without a batch
     * @param plans   of every house
     */
    public record At(
            Site site,
            Instant now,
            Map<String, List<Cared>> byHouse,
            HouseClimateFit fit,
            HousePlans plans,
            List<Care> cares,
            List<Treatment> treatments) {

        /** Whether the batch is to be carried to where batches of its house go on to. */
        Optional<BatchCare.MoveAdvice> usualMoveOf(Cared cared) {
            BatchState state = cared.snapshot().state();
            StatedMove said = plans.moveSaidOf(state.house());
            return said == null || said.move() == null
                    ? Optional.empty()
                    : new MoveOn(said.move(), said.recordedAt())
                            .adviceFor(state, Treatment.closedHouses(treatments, now));
        }
    }

    public At at(Site site, Instant now) {
        CropRecipes.ByCrop recipeOf = recipes.all();
        Map<String, List<Cared>> byHouse = new LinkedHashMap<>();
        housesOf(site).forEach(house -> byHouse.put(house, new ArrayList<>()));
        Instant since = now.minus(LOOK_BACK);
        for (BatchSnapshot snapshot : batches.now().all()) {
            if (snapshot.batch().site().equals(site.code()) && snapshot.outlook() != null) {
                String crop = names.cropOf(snapshot.batch().variety()).code();
                byHouse.get(snapshot.state().house()).add(new Cared(snapshot, recipeOf.of(crop)));
                since = snapshot.batch().stuckAt().isBefore(since)
                        ? snapshot.batch().stuckAt()
                        : since;
            }
        }
        List<Treatment> applied = treatments.of(site.code(), since, now.plusMillis(1)).stream()
                .filter(AppliedTreatment::isInForce)
                .map(AppliedTreatment::treatment)
                .toList();
        return new At(
                site,
                now,
                byHouse,
                HouseClimateFit.of(residents(byHouse), Treatment.closedHouses(applied, now), now),
                places.plans(),
                cares.of(site.code(), since).stream().map(RecordedCare::care).toList(),
                applied);
    }

    private static Map<String, List<HouseClimateFit.ResidentBatch>> residents(Map<String, List<Cared>> byHouse) {
        Map<String, List<HouseClimateFit.ResidentBatch>> residents = new LinkedHashMap<>();
        byHouse.forEach((house, batches) ->
                residents.put(house, batches.stream().map(Cared::resident).toList()));
        return residents;
    }

    public List<String> housesOf(Site site) {
        return walkingOrder.inOrder(places.houses().stream()
                .filter(house -> house.site().equals(site.code()))
                .map(House::code)
                .toList());
    }

    /** In walking order; within a house what is of the house, then batch by batch. */
    public List<RoundItem> round(At at, LocalDate on) {
        return at.byHouse().keySet().stream()
                .flatMap(house -> Rounds.of(at.site(), houseCare(at, house), Rhythm.USUAL, on, at.now()).stream())
                .toList();
    }

    private HouseCare houseCare(At at, String house) {
        List<Cared> present = at.byHouse().get(house);
        Set<String> ids = present.stream().map(Cared::id).collect(Collectors.toCollection(TreeSet::new));
        return new HouseCare(
                house,
                present.stream().map(cared -> batchCare(at, cared)).toList(),
                at.cares().stream()
                        .filter(care ->
                                care.house().equals(house) || care.batch() != null && ids.contains(care.batch()))
                        .toList(),
                at.treatments(),
                isDry(house, present, at.now()),
                isEcMeasured(house, at.now()));
    }

    private boolean isEcMeasured(String house, Instant now) {
        long until = HourlySeries.hourOf(now);
        HouseHours measured = hours.of(house, until - EC_HOURS, until);
        return LongStream.range(until - EC_HOURS, until)
                .anyMatch(hour -> !Double.isNaN(measured.at(Measured.EC_MS_PER_CM, hour)));
    }

    private static BatchCare batchCare(At at, Cared cared) {
        Outlook outlook = cared.snapshot().outlook();
        return new BatchCare(
                cared.snapshot().state(),
                cared.recipe(),
                new BatchCare.Expected(outlook.callusedAt(), outlook.rootedAt(), outlook.readyAt()),
                at.fit().moves().get(cared.id()),
                at.usualMoveOf(cared).orElse(null));
    }

    /** By what the most tender of its batches should have. */
    private boolean isDry(String house, List<Cared> present, Instant now) {
        if (present.isEmpty()) {
            return false;
        }
        long until = HourlySeries.hourOf(now);
        double mostKpa = present.stream()
                .mapToDouble(cared ->
                        cared.recipe().of(cared.phaseAt(now)).deficitKpa().most())
                .min()
                .orElseThrow();
        return DryAir.wasDry(hours.of(house, until - DryAir.DAY_HOURS, until), mostKpa, until);
    }
}
