package rootcast.app.crop.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rootcast.crop.Calibration;
import rootcast.facts.FactPosition;

/** What the record says of the ranges of versions of profiles: rows are added and read, never changed. */
@ApplicationScoped
@Transactional
class Calibrations {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<CropCalibrationRow, CropCalibrationRow.Id> {}

    /** Of one version, by when it was known. */
    NavigableMap<Instant, Calibration> of(String crop, int version) {
        Map<Integer, List<CropCalibrationRow>> bySeq =
                rows.list("id.crop = ?1 and id.versionNo = ?2", crop, version).stream()
                        .collect(Collectors.groupingBy(row -> row.id.seq(), TreeMap::new, Collectors.toList()));
        NavigableMap<Instant, Calibration> known = new TreeMap<>();
        bySeq.values().forEach(made -> known.put(made.get(0).knownAt, calibration(made)));
        return known;
    }

    /** The newest of every version that has one, by {@link #key}. */
    Map<String, Calibration> newest() {
        Map<String, List<CropCalibrationRow>> newest =
                rows.list("""
                        from CropCalibrationRow row where row.id.seq = (select max(each.id.seq) from CropCalibrationRow each
                            where each.id.crop = row.id.crop and each.id.versionNo = row.id.versionNo)""").stream().collect(Collectors.groupingBy(row -> key(row.id.crop(), row.id.versionNo())));
        Map<String, Calibration> calibrations = new HashMap<>();
        newest.forEach((key, made) -> calibrations.put(key, calibration(made)));
        return calibrations;
    }

    static String key(String crop, int version) {
        return crop + " " + version;
    }

    /** The newest entry of a batch that the newest of a version rests on. */
    FactPosition newestEntry(String crop, int version) {
        return rows.find("id.crop = ?1 and id.versionNo = ?2 order by id.seq desc", crop, version)
                .firstResultOptional()
                .map(row -> new FactPosition(row.newestEntry))
                .orElse(FactPosition.START);
    }

    void add(String crop, int version, Calibration calibration, FactPosition newestEntry, Instant knownAt) {
        int seq = rows.find("id.crop = ?1 and id.versionNo = ?2 order by id.seq desc", crop, version)
                        .firstResultOptional()
                        .map(row -> row.id.seq())
                        .orElse(0)
                + 1;
        for (Calibration.Knot knot : calibration.knots()) {
            CropCalibrationRow row = new CropCalibrationRow();
            row.id = new CropCalibrationRow.Id(crop, version, seq, knot.leadDays());
            row.early = knot.early();
            row.middle = knot.middle();
            row.late = knot.late();
            row.batches = knot.batches();
            row.newestEntry = newestEntry.value();
            row.knownAt = knownAt;
            rows.persist(row);
        }
        rows.flush();
    }

    private static Calibration calibration(List<CropCalibrationRow> made) {
        return new Calibration(made.stream()
                .sorted(Comparator.comparingDouble(row -> row.id.leadDays()))
                .map(row -> new Calibration.Knot(row.id.leadDays(), row.early, row.middle, row.late, row.batches))
                .toList());
    }
}
