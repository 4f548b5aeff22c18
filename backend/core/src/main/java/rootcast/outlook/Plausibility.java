package rootcast.outlook;

import java.time.Instant;
import java.util.Optional;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.ledger.Sample;
import rootcast.ledger.What;
import rootcast.numerics.CountDistribution;

/**
 * Whether what somebody saw of a batch is worth a question before it is believed.
 *
 * <p>Asked about is what the outlook, made without it, gives a probability under {@value #RARE} for it or anything
 * stranger. Plants must also differ from the books by more than a tenth: the model knows nothing of a dropped tray, and
 * nobody wants to be asked about five plants. Both limits are common practice, no source.
 */
public final class Plausibility {

    public static final double RARE = 0.01;

    private static final double WORTH_ASKING_SHARE = 0.1;

    /** A distribution of living plants is gone through at so many equally likely numbers. */
    private static final int SHARES = 64;

    private final BatchState before;
    private final BatchOutlook outlook;

    /**
     * @param before  the batch right before the entry
     * @param outlook of just that
     */
    public Plausibility(BatchState before, BatchOutlook outlook) {
        this.before = before;
        this.outlook = outlook;
    }

    /** What speaks against an entry that the rules allow; empty where nothing does, and for what nobody foretells. */
    public Optional<Doubt> of(Entry entry) {
        What what = entry.what();
        Instant at = entry.happenedAt();
        if (what instanceof What.Count count) {
            return plants(at, count.plants());
        }
        if (what instanceof What.Loss loss) {
            return plants(at, before.alivePlants() - loss.plants());
        }
        if (what instanceof What.SampledCount count) {
            return sample(at, count.sample());
        }
        if (what instanceof What.StageReached reached) {
            return stage(at, reached.stage());
        }
        if (what instanceof What.Look look && 10L * look.reached() >= 9L * look.cells()) {
            return stage(at, look.stage());
        }
        return Optional.empty();
    }

    private Optional<Doubt> plants(Instant at, int seen) {
        if (isNearTheBooks(seen)) {
            return Optional.empty();
        }
        CountDistribution alive = outlook.aliveAt(at);
        return doubt(alive, seen, Math.min(alive.atMost(seen), alive.atLeast(seen)));
    }

    private Optional<Doubt> sample(Instant at, Sample sample) {
        int seen = sample.alivePlants(before.places());
        if (isNearTheBooks(seen)) {
            return Optional.empty();
        }
        CountDistribution alive = outlook.aliveAt(at);
        double fewerBlanks = 0;
        double moreBlanks = 0;
        for (int share = 0; share < SHARES; share++) {
            CountDistribution blanks = blanks(
                    before.places(), Math.min(before.places(), alive.quantile((share + 0.5) / SHARES)), sample.cells());
            fewerBlanks += blanks.atMost(sample.blanks()) / SHARES;
            moreBlanks += blanks.atLeast(sample.blanks()) / SHARES;
        }
        return doubt(alive, seen, Math.min(fewerBlanks, moreBlanks));
    }

    /**
     * Blanks among {@code cells} of {@code places} with {@code alive} plants: hypergeometric.
     *
     * <p>Source: Johnson, Kemp and Kotz 2005, Univariate Discrete Distributions, 3rd ed., §6.2, by the ratio of neighbours.
     */
    private static CountDistribution blanks(int places, int alive, int cells) {
        int first = Math.max(0, cells - alive);
        int last = Math.min(cells, places - alive);
        double[] logWeights = new double[last - first + 1];
        for (int blanks = first; blanks < last; blanks++) {
            double ratio = (double) (places - alive - blanks)
                    * (cells - blanks)
                    / ((blanks + 1.0) * (alive - cells + blanks + 1.0));
            logWeights[blanks + 1 - first] = logWeights[blanks - first] + Math.log(ratio);
        }
        return CountDistribution.ofLogWeights(first, logWeights);
    }

    private boolean isNearTheBooks(int seen) {
        return Math.abs(seen - before.alivePlants()) <= WORTH_ASKING_SHARE * before.alivePlants();
    }

    private Optional<Doubt> doubt(CountDistribution alive, int seen, double probability) {
        if (probability >= RARE) {
            return Optional.empty();
        }
        return Optional.of(new Doubt.OfPlants(
                seen, before.alivePlants(), alive.quantile(RARE), alive.quantile(1 - RARE), Math.max(0, probability)));
    }

    private Optional<Doubt> stage(Instant at, Stage stage) {
        DateDistribution ends = outlook.reached(stage);
        double probability = ends.probabilityBy(at);
        return probability >= RARE
                ? Optional.empty()
                : Optional.of(new Doubt.OfStage(stage, at, ends.range(), probability));
    }
}
