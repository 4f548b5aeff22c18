package rootcast.ledger;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;

/**
 * Which entries may be written. Each rule is one method; {@link #whyImpossible} is their list.
 *
 * <p>An entry must fit the moment it speaks of, and what is already recorded for later moments must still have been
 * possible after it.
 */
public final class EntryRules {

    /** How far a device's clock may run ahead before its entries are refused. Common practice, no source. */
    public static final Duration CLOCK_TOLERANCE = Duration.ofMinutes(2);

    /** Larger amounts are taken for a slip of the finger. */
    public static final int MOST_TRAYS = 20_000;

    private EntryRules() {}

    /**
     * Books of {@code batch} with {@code entry} among its {@code recorded} entries, or why it may not join them.
     *
     * @param recorded entries of the batch so far, in any order; empty only for its {@code stick}
     */
    public static Decision decide(Batch batch, List<Entry> recorded, Entry entry, Instant now) {
        if (entry.happenedAt().isAfter(now.plus(CLOCK_TOLERANCE))) {
            return new Decision.Refused(new Refusal.InTheFuture(entry.happenedAt(), now));
        }
        if (entry.what() instanceof What.Reversal reversal) {
            Optional<Refusal> refusal = whyNotReversed(recorded, reversal);
            if (refusal.isPresent()) {
                return new Decision.Refused(refusal.get());
            }
        }
        BatchFold before = BatchFold.of(batch, recorded);
        List<Entry> all = new ArrayList<>(recorded);
        all.add(entry);
        BatchFold after = BatchFold.of(batch, all);
        if (after.impossible().isPresent()) {
            return new Decision.Refused(seenFrom(entry, after.impossible().get()));
        }
        return new Decision.Accepted(after, after.postingsSince(before));
    }

    /** What {@link #decide} found. */
    public sealed interface Decision {
        /** @param postings what the entry posts; they sum to zero at every instant */
        record Accepted(BatchFold books, List<Posting> postings) implements Decision {}

        record Refused(Refusal because) implements Decision {}
    }

    private static Refusal seenFrom(Entry entry, BatchFold.Impossible impossible) {
        Entry broken = impossible.entry();
        if (broken.id().equals(entry.id())) {
            return impossible.because();
        }
        return new Refusal.ContradictsLater(
                broken.id(), broken.what().kind(), broken.happenedAt(), impossible.because());
    }

    private static Optional<Refusal> whyNotReversed(List<Entry> recorded, What.Reversal reversal) {
        UUID wanted = reversal.entry();
        Optional<Entry> target =
                recorded.stream().filter(entry -> entry.id().equals(wanted)).findFirst();
        if (target.isEmpty()) {
            return Optional.of(new Refusal.NoSuchEntry(wanted));
        }
        What what = target.get().what();
        if (what instanceof What.Reversal) {
            return Optional.of(new Refusal.CannotBeReversed(wanted, what.kind()));
        }
        return recorded.stream()
                .filter(entry -> entry.what() instanceof What.Reversal other
                        && other.entry().equals(wanted))
                .findFirst()
                .map(by -> new Refusal.AlreadyReversed(wanted, by.id()));
    }

    /** Why {@code entry} cannot have happened to a batch that stood as {@code before}; empty if it can. */
    static Optional<Refusal> whyImpossible(BatchState before, Entry entry) {
        What what = entry.what();
        if (what instanceof What.Stick stick) {
            return sticking(before, stick);
        }
        if (!before.isStuck()) {
            return Optional.of(new Refusal.BeforeSticking(
                    entry.happenedAt(), before.batch().stuckAt()));
        }
        if (what instanceof What.Loss loss) {
            return loss(before, loss);
        }
        if (what instanceof What.Count count) {
            return count(before, count);
        }
        if (what instanceof What.SampledCount count) {
            return sample(before, count.sample());
        }
        if (what instanceof What.StageReached reached) {
            return stage(before, reached.stage());
        }
        if (what instanceof What.Look look) {
            return look(before, look);
        }
        if (what instanceof What.Move move) {
            return before.house().equals(move.house())
                    ? Optional.of(new Refusal.AlreadyInHouse(move.house()))
                    : Optional.empty();
        }
        if (what instanceof What.Ship ship) {
            return ship(before, ship);
        }
        throw new IllegalArgumentException(what.kind() + " takes no part in the fold");
    }

    private static Optional<Refusal> sticking(BatchState before, What.Stick stick) {
        if (before.isStuck()) {
            // Nobody can enter this; taken in, it would replace the plants that are booked and break the sum.
            throw new IllegalArgumentException(
                    "batch %s is stuck already".formatted(before.batch().id()));
        }
        if (stick.trays() < 1 || stick.trays() > MOST_TRAYS) {
            return Optional.of(new Refusal.OutOfRange("trays", stick.trays(), 1, MOST_TRAYS));
        }
        long most = (long) stick.trays() * before.batch().trayFormat().cells();
        if (stick.plants() < 1 || stick.plants() > most) {
            return Optional.of(new Refusal.OutOfRange("plants", stick.plants(), 1, most));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> loss(BatchState before, What.Loss loss) {
        if (loss.plants() < 1) {
            return Optional.of(new Refusal.OutOfRange("plants", loss.plants(), 1, before.alivePlants()));
        }
        if (loss.plants() > before.alivePlants()) {
            return Optional.of(new Refusal.MoreThanAlive(loss.plants(), before.alivePlants()));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> count(BatchState before, What.Count count) {
        int most = before.stuckPlants() - before.shippedPlants();
        if (count.plants() < 0) {
            return Optional.of(new Refusal.OutOfRange("plants", count.plants(), 0, most));
        }
        if (count.plants() > most) {
            return Optional.of(new Refusal.MoreThanStuck(count.plants(), most));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> sample(BatchState before, Sample sample) {
        int cellsPerTray = before.batch().trayFormat().cells();
        if (sample.trays() < 1
                || sample.trays() > before.benchTrays()
                || sample.cells() < 1
                || sample.cells() > (long) sample.trays() * cellsPerTray
                || sample.cells() > before.places()) {
            return Optional.of(new Refusal.SampleBeyondBatch(sample, before.benchTrays(), cellsPerTray));
        }
        if (sample.blanks() < 0 || sample.blanks() > sample.cells()) {
            return Optional.of(new Refusal.OutOfRange("blanks", sample.blanks(), 0, sample.cells()));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> stage(BatchState before, Stage asked) {
        if (!asked.isAfter(before.stage()) || asked == Stage.SHIP) {
            return Optional.of(new Refusal.StageGoesBack(asked, before.stage()));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> look(BatchState before, What.Look look) {
        if (look.cells() < 1 || look.cells() > before.places()) {
            return Optional.of(new Refusal.OutOfRange("cells", look.cells(), 1, before.places()));
        }
        if (look.reached() < 0 || look.reached() > look.cells()) {
            return Optional.of(new Refusal.OutOfRange("reached", look.reached(), 0, look.cells()));
        }
        return Optional.empty();
    }

    private static Optional<Refusal> ship(BatchState before, What.Ship ship) {
        if (!before.stage().isAfter(Stage.CALLUS)) {
            return Optional.of(new Refusal.ShipBeforeRooted(before.stage()));
        }
        if (ship.trays() < 1) {
            return Optional.of(new Refusal.OutOfRange("trays", ship.trays(), 1, before.saleableTrays()));
        }
        TrayFormat format = before.batch().trayFormat();
        if (ship.trays() > before.saleableTrays()) {
            return Optional.of(new Refusal.MoreThanSaleable(
                    ship.trays(), before.saleableTrays(), before.alivePlants(), format.saleCount()));
        }
        int least = ship.trays() * format.saleCount();
        int most = ship.trays() * format.cells();
        if (ship.plants() < least || ship.plants() > most) {
            return Optional.of(new Refusal.PlantsDoNotFitTrays(ship.plants(), ship.trays(), least, most));
        }
        if (ship.plants() > before.alivePlants()) {
            return Optional.of(new Refusal.MoreThanAlive(ship.plants(), before.alivePlants()));
        }
        return Optional.empty();
    }
}
