package rootcast.app.learning;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.snapshot.Snapshots;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.Variety;
import rootcast.learning.BatchRecord;
import rootcast.learning.LearnedProfile;
import rootcast.learning.Learning;
import rootcast.learning.LivedStages;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;

/** Learns a crop's profile from every batch of it that there ever was, beginning from what people stated of it. */
@ApplicationScoped
@Transactional
public class LearnCrop {

    @Inject
    Catalogue catalogue;

    @Inject
    PanacheLedger ledger;

    @Inject
    Snapshots snapshots;

    /** @param sourced the profile learned, with what it says of its sources */
    public record Proposal(SourcedCrop sourced, LearnedProfile learned) {}

    public Proposal learn(String code, Instant now) {
        SourcedCrop before = catalogue.crop(code).orElseThrow(() -> Problem.notFound(Thing.CROP, code));
        CropProfile stated = catalogue.stated(code);
        LearnedProfile learned = Learning.learn(stated, before.crop().profile(), records(code, stated, now, now), now);
        Map<Stage, String> sources = new EnumMap<>(Stage.class);
        learned.evidence()
                .stages()
                .forEach(stage -> sources.put(
                        stage.stage(),
                        "learned from %d batches on %s"
                                .formatted(stage.observations(), now.toString().substring(0, 10))));
        Crop crop = new Crop(code, before.crop().name(), learned.profile());
        return new Proposal(new SourcedCrop(crop, 0, sources, before.note()), learned);
    }

    /**
     * The profile for each batch seen ready, learned in as many parts as {@code folds} from all other batches than those
     * of its part: what the batch is foretold with then knows nothing of it.
     *
     * @param learnedAt only from batches stuck by then; those that were stuck later have no part in it
     */
    public Map<String, CropProfile> learnedWithout(String code, int folds, Instant learnedAt, Instant now) {
        CropProfile stated = catalogue.stated(code);
        List<BatchRecord> records = records(code, stated, learnedAt, now);
        List<String> finished = records.stream()
                .filter(BatchRecord::finished)
                .map(BatchRecord::id)
                .sorted()
                .toList();
        Map<String, CropProfile> learned = new HashMap<>();
        for (int fold = 0; fold < Math.min(folds, finished.size()); fold++) {
            Set<String> leftOut = new HashSet<>();
            for (int i = fold; i < finished.size(); i += folds) {
                leftOut.add(finished.get(i));
            }
            List<BatchRecord> others = records.stream()
                    .filter(record -> !leftOut.contains(record.id()))
                    .toList();
            CropProfile profile = Learning.learn(stated, others, now).profile();
            leftOut.forEach(id -> learned.put(id, profile));
        }
        return learned;
    }

    private List<BatchRecord> records(String crop, CropProfile profile, Instant stuckBy, Instant now) {
        List<String> varieties = catalogue.varieties().stream()
                .filter(variety -> variety.crop().equals(crop))
                .map(Variety::code)
                .toList();
        List<BatchFold> folds = ledger.foldsOf(varieties).stream()
                .filter(fold -> !fold.state().batch().stuckAt().isAfter(stuckBy))
                .toList();
        Set<String> houses = new HashSet<>();
        folds.forEach(fold -> fold.state().placements().forEach(placement -> houses.add(placement.house())));
        HouseCurves curves = snapshots.now().part(ClimateSnapshot.class).curves(houses, now, now, List.of());
        double referenceC = profile.of(Stage.STICK).cardinals().referenceC();
        return folds.stream().map(fold -> record(fold, curves, referenceC)).toList();
    }

    private static BatchRecord record(BatchFold fold, HouseCurves curves, double referenceC) {
        BatchState state = fold.state();
        Batch batch = state.batch();
        return BatchRecord.of(
                batch.id(),
                batch.variety(),
                batch.site(),
                HistoryOfBatch.of(state),
                LivedStages.of(fold),
                curves,
                referenceC);
    }
}
