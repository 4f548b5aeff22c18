package rootcast.app.outlook;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.Plausible;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.problem.DoubtTable;
import rootcast.app.problem.Problem;
import rootcast.app.site.store.Places;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.crop.CropProfile;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.Doubt;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Plausibility;

/** What the outlook without the new entries says of them. Profiles and curves are those of the newest snapshot. */
@ApplicationScoped
class PlausibleByOutlook implements Plausible {

    private static final Logger LOG = Logger.getLogger(PlausibleByOutlook.class);

    @Inject
    PanacheLedger ledger;

    @Inject
    Snapshots snapshots;

    @Inject
    Catalogue catalogue;

    @Inject
    Places places;

    @Override
    public Optional<Problem> doubtOf(Batch batch, Set<UUID> written) {
        List<Entry> all = ledger.entriesOf(batch.id());
        List<Entry> before =
                all.stream().filter(entry -> !written.contains(entry.id())).toList();
        return all.stream()
                .filter(entry -> written.contains(entry.id()))
                .flatMap(entry -> doubt(batch, before, entry).stream())
                .findFirst()
                .map(DoubtTable::problemOf);
    }

    /** A batch whose outlook cannot be made is recorded all the same: only the question is left out. */
    private Optional<Doubt> doubt(Batch batch, List<Entry> before, Entry entry) {
        try {
            return BatchFold.of(batch, before)
                    .stateAt(entry.happenedAt())
                    .flatMap(state -> new Plausibility(state, outlook(state, entry)).of(entry));
        } catch (RuntimeException fault) {
            LOG.warnf(fault, "nothing can be said of the plausibility of an entry of batch %s", batch.id());
            return Optional.empty();
        }
    }

    private BatchOutlook outlook(BatchState state, Entry entry) {
        Snapshot now = snapshots.now();
        Batch batch = state.batch();
        Set<String> houses =
                state.placements().stream().map(BatchState.Placement::house).collect(Collectors.toSet());
        HouseCurves curves = climate(now, houses).curves(houses, entry.happenedAt(), entry.recordedAt(), List.of());
        return BatchOutlook.of(HistoryOfBatch.of(state), profile(now, batch), batch.trayFormat(), curves);
    }

    /** A variety that this very command made is in no snapshot yet. */
    private CropProfile profile(Snapshot now, Batch batch) {
        CatalogueSnapshot known = now.part(CatalogueSnapshot.class);
        if (known.varieties().containsKey(batch.variety())) {
            return known.profile(batch.variety(), batch.site());
        }
        String crop = catalogue.variety(batch.variety()).orElseThrow().crop();
        return catalogue.crop(crop).orElseThrow().crop().profile().forBatch(batch.variety(), batch.site());
    }

    /** The same of a house. */
    private ClimateSnapshot climate(Snapshot now, Set<String> houses) {
        ClimateSnapshot known = now.part(ClimateSnapshot.class);
        return known.houses().keySet().containsAll(houses) ? known : known.with(places.houses(), places.plans());
    }
}
