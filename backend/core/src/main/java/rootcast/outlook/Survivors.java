package rootcast.outlook;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import rootcast.crop.CropProfile;
import rootcast.numerics.Beta;
import rootcast.numerics.CountDistribution;
import rootcast.outlook.BatchHistory.Plants;

/**
 * How many plants of a batch are alive on the bench when it is ready.
 *
 * <p>The computation starts at the base count, not now: losses that nobody has recorded yet are expected all the same. It
 * goes from fact to fact, base → sample → last recorded loss or shipment → ready, each step as {@link CarriedCount}
 * says, with the survival of the stages' parts between them as {@link StageSurvival} says. Parts before and after a fact
 * are taken as independent.
 *
 * <p>It depends on the records, the profile and the development up to the last record. Time alone does not change it.
 */
public final class Survivors {

    private static final double[] ALL_DONE = {1, 1, 1};

    private final CropProfile profile;
    private final CountDistribution atLastFact;
    private final double[] doneAtLastFact;
    private final CountDistribution whenReady;

    private Survivors(CropProfile profile, CountDistribution atLastFact, double[] doneAtLastFact) {
        this.profile = profile;
        this.atLastFact = atLastFact;
        this.doneAtLastFact = doneAtLastFact;
        this.whenReady = CarriedCount.through(atLastFact, survival(profile, doneAtLastFact, ALL_DONE), 0, 0)
                .orElseThrow();
    }

    static Survivors of(BatchHistory history, CropProfile profile, StagePath path, StageRates rates) {
        double[] multiplier = rates.atNode(RateBelief.median());
        long[] ends = path.ends(rates, RateBelief.median());
        Facts facts = new Facts(history, profile, at -> path.doneOfEach(ends, multiplier, at));
        return facts.afterSample().or(facts::withoutSample).orElseThrow();
    }

    /** Plants on the bench when the batch is ready; once it is, now. */
    public CountDistribution whenReady() {
        return whenReady;
    }

    /** Plants alive at a moment from the last fact on, when these shares of the stages are done. */
    CountDistribution alive(double[] done) {
        return CarriedCount.through(atLastFact, survival(profile, doneAtLastFact, done), 0, 0)
                .orElseThrow();
    }

    /** Mean number alive at a moment from the last fact on, when these shares of the stages are done. */
    double expectedAlive(double[] done) {
        return atLastFact.mean() * StageSurvival.meanThrough(profile, parts(doneAtLastFact, done));
    }

    private static Optional<Beta> survival(CropProfile profile, double[] fromDone, double[] toDone) {
        return StageSurvival.through(profile, parts(fromDone, toDone));
    }

    private static double[] parts(double[] fromDone, double[] toDone) {
        double[] parts = new double[StagePath.STAGES];
        Arrays.setAll(parts, stage -> toDone[stage] - fromDone[stage]);
        return parts;
    }

    /** Shares of the three stages done at an instant. */
    private interface DoneAt {
        double[] at(Instant instant);
    }

    private record Facts(BatchHistory history, CropProfile profile, DoneAt done) {

        /** Empty if there is no sample, or later records took more plants than it can have left. */
        Optional<Survivors> afterSample() {
            BatchHistory.Sample sample = history.sample();
            if (sample == null) {
                return Optional.empty();
            }
            Predicate<Plants> before = record -> !record.at().isAfter(sample.at());
            double[] doneAtSample = done.at(sample.at());
            CountDistribution alive = CarriedCount.sampled(
                    history.base().plants(),
                    survival(profile, done.at(history.base().at()), doneAtSample),
                    sum(history.losses(), before),
                    sum(history.shipments(), before),
                    sample);
            return throughRecords(alive, doneAtSample, before.negate());
        }

        Optional<Survivors> withoutSample() {
            CountDistribution alive = CountDistribution.certain(history.base().plants());
            return throughRecords(alive, done.at(history.base().at()), record -> true);
        }

        private Optional<Survivors> throughRecords(
                CountDistribution alive, double[] doneThen, Predicate<Plants> counts) {
            Optional<Instant> last = Stream.concat(history.losses().stream(), history.shipments().stream())
                    .filter(counts)
                    .map(Plants::at)
                    .max(Instant::compareTo);
            double[] doneNow = last.map(done::at).orElse(doneThen);
            return CarriedCount.through(
                            alive,
                            survival(profile, doneThen, doneNow),
                            sum(history.losses(), counts),
                            sum(history.shipments(), counts))
                    .map(left -> new Survivors(profile, left, doneNow));
        }

        private static int sum(List<Plants> records, Predicate<Plants> counts) {
            return records.stream().filter(counts).mapToInt(Plants::plants).sum();
        }
    }
}
