package rootcast.app.rounds;

import org.jspecify.annotations.Nullable;
import rootcast.ledger.Sample;
import rootcast.rounds.Arrival;

/** What somebody saw while doing an item. Which of it is wanted depends on the task. */
public record Observed(
        @Nullable Integer cells,
        @Nullable Integer reached,
        @Nullable Boolean stageReached,
        @Nullable Integer plants,
        @Nullable Sample sample,
        @Nullable String house,
        @Nullable Integer level,
        Pests pests,
        @Nullable Double nitrogenPpm,
        @Nullable Double ecMsPerCm,
        @Nullable Arrival arrival,
        @Nullable String note) {

    static final Observed NOTHING =
            new Observed(null, null, null, null, null, null, null, Pests.NONE_SAID, null, null, null, null);
}
