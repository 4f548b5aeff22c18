package rootcast.app.lookback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Set;
import java.util.stream.Collectors;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchesInTime;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.ledger.BatchState;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HouseCurves;

/** One batch as it was. */
@ApplicationScoped
class BatchesFromTables implements BatchesInTime {

    @Inject
    PastFacts facts;

    @Override
    public BatchInTime batch(String id, AsOf when) {
        PastFacts.PastBatch past = facts.batch(id, when)
                .orElseThrow(() -> new Problem(
                                ProblemType.NOT_KNOWN_THEN,
                                "There was no batch '%s' by %s, as far as was known at %s."
                                        .formatted(id, when.happenedBy(), when.recordedBy()))
                        .with("asked", id)
                        .with("happenedBy", when.happenedBy())
                        .with("recordedBy", when.recordedBy()));
        Set<String> stood = past.state().placements().stream()
                .map(BatchState.Placement::house)
                .collect(Collectors.toSet());
        HouseCurves houses = facts.curves(stood, when);
        BatchInTime.Version profile = facts.profile(past.batch(), when.orderedBy());
        BatchOutlook made = facts.outlook(past, profile, houses);
        return new BatchInTime(
                facts.snapshot(past, made),
                made,
                houses,
                profile,
                facts.profile(past.batch(), past.batch().stuckAt()));
    }
}
