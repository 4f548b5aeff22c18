package rootcast.app.outlook;

import java.util.Collection;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;

/**
 * Every batch with plants alive, and what is set apart. A finished batch needs no place in memory: the tables have it.
 *
 * @param live        by id; not changed any more by whoever gave it
 * @param faulty      by id
 * @param idsByCell   live batches of a cell, in order of their ids
 * @param newestEntry position of the newest entry of any batch
 */
public record BatchesSnapshot(
        Map<String, BatchSnapshot> live,
        Map<String, FaultyBatch> faulty,
        Map<Cell, List<String>> idsByCell,
        FactPosition newestEntry) {

    public BatchesSnapshot {
        live = Collections.unmodifiableMap(live);
    }

    public Optional<BatchSnapshot> batch(String id) {
        return Optional.ofNullable(live.get(id));
    }

    public Collection<BatchSnapshot> all() {
        return live.values();
    }

    public List<BatchSnapshot> of(Cell cell) {
        return idsByCell.getOrDefault(cell, List.of()).stream().map(live::get).toList();
    }

    public List<FaultyBatch> faultyOf(Cell cell) {
        return faulty.values().stream()
                .filter(each -> BatchSnapshot.cellOf(each.batch()).equals(cell))
                .sorted((a, b) -> a.batch().id().compareTo(b.batch().id()))
                .toList();
    }

    public Set<Cell> cells() {
        return idsByCell.keySet();
    }
}
