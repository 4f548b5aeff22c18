package rootcast.outlook;

import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;

/**
 * What the ledger says of one batch, as far as the outlook needs it.
 *
 * @param reachedAt when CALLUS, ROOT and READY were seen complete; a stage not seen is absent
 * @param placements     the houses it stood in, in order, the first from {@code stuckAt}
 * @param base      plants alive at the last full count, or at sticking if there was none
 * @param losses    recorded since the base, without differences that a count posted
 * @param shipments plants that left since the base
 * @param sample    the last sampled count since the base; null if none
 * @param looks     looks at some cells for a stage, in any order
 */
public record BatchHistory(
        Instant stuckAt,
        Map<Stage, Instant> reachedAt,
        List<Placement> placements,
        Plants base,
        List<Plants> losses,
        List<Plants> shipments,
        @Nullable Sample sample,
        List<Look> looks) {

    /** From {@code fromInclusive} until the next placement begins. */
    public record Placement(String house, Instant fromInclusive) {}

    public record Plants(Instant at, int plants) {}

    /**
     * A count of some cells.
     *
     * @param places       cells of all trays that were on the bench
     * @param sampledCells cells looked at
     * @param blanks       of these, cells without a living plant
     */
    public record Sample(Instant at, int places, int sampledCells, int blanks) {

        public Sample {
            if (!(0 <= blanks && blanks <= sampledCells && sampledCells <= places)) {
                throw new IllegalArgumentException(
                        "%d blanks in %d sampled cells of %d places must rise".formatted(blanks, sampledCells, places));
            }
        }

        public int good() {
            return sampledCells - blanks;
        }
    }

    /**
     * A look at some cells for a stage.
     *
     * @param stage   CALLUS, ROOT or READY
     * @param cells   cells with a living plant that were looked at
     * @param reached of these, cells that had reached the stage
     */
    public record Look(Instant at, Stage stage, int cells, int reached) {

        /** Any order that does not depend on how the looks came in will do; this one is by time. */
        private static final Comparator<Look> BY_TIME = Comparator.comparing(Look::at)
                .thenComparing(Look::stage)
                .thenComparing(Look::cells)
                .thenComparing(Look::reached);

        /** Nine in ten have reached it: the stage is complete. */
        public boolean isComplete() {
            return 10L * reached >= 9L * cells;
        }

        public Look {
            if (stage == Stage.STICK || stage == Stage.SHIP) {
                throw new IllegalArgumentException("a look for " + stage + " says nothing of a rate");
            }
            if (!(0 <= reached && reached <= cells && cells > 0)) {
                throw new IllegalArgumentException(
                        "%d of %d cells reached: cells must be over 0 and no fewer".formatted(reached, cells));
            }
        }
    }

    public BatchHistory {
        reachedAt = Map.copyOf(reachedAt);
        placements = List.copyOf(placements);
        losses = List.copyOf(losses);
        shipments = List.copyOf(shipments);
        looks = looks.stream().sorted(Look.BY_TIME).toList();
        if (placements.isEmpty() || !placements.get(0).fromInclusive().equals(stuckAt)) {
            throw new IllegalArgumentException("the first placement must begin at sticking, " + stuckAt);
        }
        for (int i = 1; i < placements.size(); i++) {
            if (placements.get(i).fromInclusive().isBefore(placements.get(i - 1).fromInclusive())) {
                throw new IllegalArgumentException("placement at %s begins before the one ahead of it"
                        .formatted(placements.get(i).fromInclusive()));
            }
        }
        requireStagesInOrder(stuckAt, reachedAt);
        requireNotBefore(base.at(), losses, shipments, sample);
        looks.stream().filter(look -> look.at().isBefore(stuckAt)).findFirst().ifPresent(look -> {
            throw new IllegalArgumentException("look at %s is before sticking at %s".formatted(look.at(), stuckAt));
        });
        long gone = sum(losses) + sum(shipments);
        if (base.plants() < 0 || gone > base.plants()) {
            throw new IllegalArgumentException(
                    "%d plants lost and shipped of %d at the base".formatted(gone, base.plants()));
        }
    }

    /** Of a batch that nobody has looked at for a stage. */
    public BatchHistory(
            Instant stuckAt,
            Map<Stage, Instant> reachedAt,
            List<Placement> placements,
            Plants base,
            List<Plants> losses,
            List<Plants> shipments,
            @Nullable Sample sample) {
        this(stuckAt, reachedAt, placements, base, losses, shipments, sample, List.of());
    }

    private static void requireStagesInOrder(Instant stuckAt, Map<Stage, Instant> reachedAt) {
        Instant last = stuckAt;
        for (Stage stage : List.of(Stage.CALLUS, Stage.ROOT, Stage.READY)) {
            Instant at = reachedAt.getOrDefault(stage, last);
            if (at.isBefore(last)) {
                throw new IllegalArgumentException("%s reached at %s, before %s".formatted(stage, at, last));
            }
            last = at;
        }
    }

    private static void requireNotBefore(
            Instant base, List<Plants> losses, List<Plants> shipments, @Nullable Sample sample) {
        Stream<Instant> counted =
                Stream.concat(losses.stream(), shipments.stream()).map(Plants::at);
        Stream<Instant> all = sample == null ? counted : Stream.concat(counted, Stream.of(sample.at()));
        all.filter(at -> at.isBefore(base)).findFirst().ifPresent(at -> {
            throw new IllegalArgumentException("record at %s is before the base at %s".formatted(at, base));
        });
    }

    /** The latest moment of anything that was recorded: readings after it do not change how far the batch was then. */
    public Instant newestFactAt() {
        return Stream.of(
                        Stream.of(base.at()),
                        losses.stream().map(Plants::at),
                        shipments.stream().map(Plants::at),
                        Stream.ofNullable(sample).map(Sample::at),
                        reachedAt.values().stream(),
                        looks.stream().map(Look::at))
                .flatMap(at -> at)
                .max(Instant::compareTo)
                .orElseThrow();
    }

    BatchHistory moved(List<Placement> further) {
        return new BatchHistory(
                stuckAt,
                reachedAt,
                Stream.concat(placements.stream(), further.stream()).toList(),
                base,
                losses,
                shipments,
                sample,
                looks);
    }

    BatchHistory withLooks(List<Look> others) {
        return new BatchHistory(stuckAt, reachedAt, placements, base, losses, shipments, sample, others);
    }

    int shippedPlants() {
        return Math.toIntExact(sum(shipments));
    }

    @Nullable
    Instant lastShippedAt() {
        return shipments.stream().map(Plants::at).max(Instant::compareTo).orElse(null);
    }

    /** Where it stands now. */
    public String house() {
        return placements.get(placements.size() - 1).house();
    }

    /** Where it stands at a time, in milliseconds since 1970-01-01T00:00Z; before sticking, where it is stuck. */
    String houseAt(long millis) {
        String house = placements.get(0).house();
        for (Placement placement : placements) {
            house = placement.fromInclusive().toEpochMilli() <= millis ? placement.house() : house;
        }
        return house;
    }

    Optional<Instant> reached(Stage stage) {
        return Optional.ofNullable(reachedAt.get(stage));
    }

    private static long sum(List<Plants> records) {
        return records.stream().mapToLong(Plants::plants).sum();
    }
}
