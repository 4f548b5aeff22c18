package rootcast.app.crop.store;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toMap;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.ProfileVersion;
import rootcast.app.crop.ProfileVersion.Origin;
import rootcast.app.crop.SourcedCrop;
import rootcast.crop.Calibration;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.StatedProfile;
import rootcast.crop.Variation;

/** Versions of crop profiles and their adoptions: rows are added and read, never changed. */
@ApplicationScoped
@Transactional
public class ProfileVersions {

    private static final String VARIETY = "variety";
    private static final String SITE = "site";

    /** Of rows of a version: those whose version was adopted last. */
    private static final String IN_FORCE = """
            %1$s.id.versionNo = (select adoption.versionNo from CropProfileAdoptionRow adoption
                where adoption.id.crop = %1$s.id.crop and adoption.id.seq = (
                    select max(each.id.seq) from CropProfileAdoptionRow each where each.id.crop = %1$s.id.crop))""";

    @Inject
    Profiles profiles;

    @Inject
    ProfileStages stages;

    @Inject
    ProfileRates rates;

    @Inject
    Adoptions adoptions;

    @Inject
    Calibrations calibrations;

    @Inject
    CropMapper mapper;

    @ApplicationScoped
    static class Profiles implements PanacheRepositoryBase<CropProfileRow, CropProfileRow.Id> {}

    @ApplicationScoped
    static class ProfileStages implements PanacheRepositoryBase<CropProfileStageRow, CropProfileStageRow.Id> {}

    @ApplicationScoped
    static class ProfileRates implements PanacheRepositoryBase<CropProfileRateRow, CropProfileRateRow.Id> {}

    @ApplicationScoped
    static class Adoptions implements PanacheRepositoryBase<CropProfileAdoptionRow, CropProfileAdoptionRow.Id> {}

    /** Every version of a crop, newest first. */
    List<ProfileVersion> of(CropRow crop) {
        List<CropProfileAdoptionRow> adopted = adoptionsOf(crop.code);
        return profiles.list("id.crop = ?1 order by id.versionNo desc", crop.code).stream()
                .map(row -> version(crop, row, adopted))
                .toList();
    }

    private List<CropProfileAdoptionRow> adoptionsOf(String crop) {
        return adoptions.list("id.crop = ?1 order by id.seq", crop);
    }

    /** The version in force at an instant; before any was adopted, the first. */
    int inForce(String crop, Instant at) {
        List<CropProfileAdoptionRow> adopted = adoptionsOf(crop);
        int version = adopted.get(0).versionNo;
        for (CropProfileAdoptionRow row : adopted) {
            version = row.adoptedAt.isAfter(at) ? version : row.versionNo;
        }
        return version;
    }

    /** From when which profile was in force and what the record said of it; the first from the beginning of time. */
    NavigableMap<Instant, CropProfile> history(CropRow crop) {
        NavigableMap<Instant, CropProfile> history = new TreeMap<>();
        for (CropProfileAdoptionRow row : adoptionsOf(crop.code)) {
            CropProfile profile = uncalibrated(crop, row.versionNo);
            Instant from = history.isEmpty() ? Instant.MIN : row.adoptedAt;
            history.tailMap(from, true).clear(); // of the version before, made after this one was adopted
            NavigableMap<Instant, Calibration> known = calibrations.of(crop.code, row.versionNo);
            history.put(from, profile.calibrated(knownBy(known, from)));
            known.tailMap(from, false).forEach((at, calibration) -> history.put(at, profile.calibrated(calibration)));
        }
        return history;
    }

    private static Calibration knownBy(NavigableMap<Instant, Calibration> known, Instant at) {
        Map.Entry<Instant, Calibration> newest = known.floorEntry(at);
        return newest == null ? Calibration.NONE : newest.getValue();
    }

    private CropProfile uncalibrated(CropRow crop, int version) {
        return sourced(crop, version).orElseThrow().crop().profile().calibrated(Calibration.NONE);
    }

    /** A version as what was known at an instant has it. */
    SourcedCrop sourced(CropRow crop, int version, Instant at) {
        SourcedCrop now = sourced(crop, version).orElseThrow();
        Calibration then = knownBy(calibrations.of(crop.code, version), at);
        Crop with = new Crop(crop.code, crop.name, now.crop().profile().calibrated(then));
        return new SourcedCrop(with, version, now.sources(), now.note());
    }

    /** The profile in force without anything that was ever learned: what learning begins from. */
    CropProfile stated(CropRow crop) {
        List<CropProfileAdoptionRow> adopted = adoptionsOf(crop.code);
        return stated(crop, adopted.get(adopted.size() - 1).versionNo, adopted);
    }

    private CropProfile stated(CropRow crop, int version, List<CropProfileAdoptionRow> adopted) {
        CropProfileRow row = profiles.findById(new CropProfileRow.Id(crop.code, version));
        CropProfile profile = uncalibrated(crop, version);
        OptionalInt seen = inForceBefore(row, adopted);
        if (seen.isEmpty()) {
            return profile;
        }
        CropProfile before = stated(crop, seen.getAsInt(), adopted);
        return origin(row) == Origin.LEARNED
                ? before
                : StatedProfile.entered(before, uncalibrated(crop, seen.getAsInt()), profile);
    }

    /** The version that was in force when a later one was made; empty for the first. */
    private static OptionalInt inForceBefore(CropProfileRow made, List<CropProfileAdoptionRow> adopted) {
        return adopted.stream()
                .filter(each -> each.versionNo < made.id.versionNo() && !each.adoptedAt.isAfter(made.recordedAt))
                .mapToInt(each -> each.versionNo)
                .reduce((earlier, later) -> later);
    }

    private static Origin origin(CropProfileRow row) {
        return Origin.valueOf(row.origin.toUpperCase(Locale.ROOT));
    }

    /** The last adoption; empty for a crop without a profile. */
    Optional<CropProfileAdoptionRow> lastAdoption(String crop) {
        return adoptions.find("id.crop = ?1 order by id.seq desc", crop).firstResultOptional();
    }

    Optional<SourcedCrop> sourced(CropRow crop, int version) {
        return profiles.findByIdOptional(new CropProfileRow.Id(crop.code, version))
                .map(row -> sourced(crop, row));
    }

    /**
     * Crops with the profile in force, in the given order. It asks five times for all of them: set-up is read again
     * after each change of it, and five times for each crop is long where crops are many.
     */
    List<SourcedCrop> inForce(List<CropRow> crops) {
        Map<String, CropProfileRow> profileOf =
                profiles.list("from CropProfileRow profile where " + IN_FORCE.formatted("profile")).stream()
                        .collect(toMap(row -> row.id.crop(), row -> row));
        Map<String, List<CropProfileStageRow>> stagesOf =
                stages.list("from CropProfileStageRow stage where " + IN_FORCE.formatted("stage")).stream()
                        .collect(groupingBy(row -> row.id.crop()));
        Map<String, List<CropProfileRateRow>> ratesOf =
                rates.list("from CropProfileRateRow rate where " + IN_FORCE.formatted("rate")).stream()
                        .collect(groupingBy(row -> row.id.crop()));
        Map<String, Calibration> newest = calibrations.newest();
        return crops.stream()
                .map(crop -> sourced(
                        crop,
                        profileOf.get(crop.code),
                        stagesOf.getOrDefault(crop.code, List.of()),
                        ratesOf.getOrDefault(crop.code, List.of()),
                        newest.getOrDefault(
                                Calibrations.key(
                                        crop.code, profileOf.get(crop.code).id.versionNo()),
                                Calibration.NONE)))
                .toList();
    }

    /** Stores the next version of the crop's profile; it is not in force until it is adopted. */
    int add(SourcedCrop sourced, Origin origin, @Nullable String evidence, Instant recordedAt) {
        String crop = sourced.crop().code();
        CropProfile profile = sourced.crop().profile();
        int version = (int) profiles.count("id.crop = ?1", crop) + 1;
        profiles.persist(mapper.row(
                profile, new CropProfileRow.Id(crop, version), sourced.note(), written(origin), evidence, recordedAt));
        profiles.flush();
        for (StageProfile stage : profile.stages()) {
            stages.persist(mapper.row(
                    stage,
                    new CropProfileStageRow.Id(crop, version, stage.stage().name()),
                    sourced.sources().get(stage.stage())));
        }
        profile.rates().varieties().forEach((code, factor) -> persist(crop, version, VARIETY, code, factor));
        profile.rates().sites().forEach((code, factor) -> persist(crop, version, SITE, code, factor));
        return version;
    }

    private void persist(String crop, int version, String kind, String code, double factor) {
        CropProfileRateRow row = new CropProfileRateRow();
        row.id = new CropProfileRateRow.Id(crop, version, kind, code);
        row.factor = factor;
        rates.persist(row);
    }

    void adopt(String crop, int version, boolean pinned, Instant at) {
        CropProfileAdoptionRow row = new CropProfileAdoptionRow();
        row.id = new CropProfileAdoptionRow.Id(crop, (int) adoptions.count("id.crop = ?1", crop) + 1);
        row.versionNo = version;
        row.pinned = pinned;
        row.adoptedAt = at;
        adoptions.persist(row);
        adoptions.flush();
    }

    private ProfileVersion version(CropRow crop, CropProfileRow row, List<CropProfileAdoptionRow> adopted) {
        Instant adoptedAt = adopted.stream()
                .filter(each -> each.versionNo == row.id.versionNo())
                .map(each -> each.adoptedAt)
                .reduce(null, (earlier, later) -> later);
        CropProfileAdoptionRow last = adopted.get(adopted.size() - 1);
        boolean inForce = last.versionNo == row.id.versionNo();
        return new ProfileVersion(
                sourced(crop, row),
                origin(row),
                row.recordedAt,
                adoptedAt,
                inForce,
                inForce && last.pinned,
                row.evidence);
    }

    private static String written(Origin origin) {
        return origin.name().toLowerCase(Locale.ROOT);
    }

    private SourcedCrop sourced(CropRow crop, CropProfileRow profile) {
        String ofVersion = "id.crop = ?1 and id.versionNo = ?2";
        String code = profile.id.crop();
        int version = profile.id.versionNo();
        Map.Entry<Instant, Calibration> newest = calibrations.of(code, version).lastEntry();
        return sourced(
                crop,
                profile,
                stages.list(ofVersion, code, version),
                rates.list(ofVersion, code, version),
                newest == null ? Calibration.NONE : newest.getValue());
    }

    private SourcedCrop sourced(
            CropRow crop,
            CropProfileRow profile,
            List<CropProfileStageRow> stages,
            List<CropProfileRateRow> rates,
            Calibration calibration) {
        List<CropProfileStageRow> inOrder = stages.stream()
                .sorted(Comparator.comparing(stage -> Stage.valueOf(stage.id.stage())))
                .toList();
        Map<Stage, String> sources = new EnumMap<>(Stage.class);
        inOrder.stream()
                .filter(stage -> stage.source != null)
                .forEach(stage -> sources.put(Stage.valueOf(stage.id.stage()), stage.source));
        CropProfile checked = new CropProfile(
                inOrder.stream().map(mapper::stage).toList(),
                profile.rateSpread,
                profile.holdDays,
                profile.cellSpread,
                factors(rates),
                new Variation(
                        profile.roundsDays,
                        profile.stageShare,
                        profile.cellsDiffer,
                        profile.daysDoubt,
                        profile.enteredShare,
                        profile.calledShare),
                calibration);
        return new SourcedCrop(new Crop(crop.code, crop.name, checked), profile.id.versionNo(), sources, profile.note);
    }

    private static RateFactors factors(List<CropProfileRateRow> rates) {
        Map<String, Double> varieties = new HashMap<>();
        Map<String, Double> sites = new HashMap<>();
        rates.forEach(row -> (row.id.kind().equals(VARIETY) ? varieties : sites).put(row.id.code(), row.factor));
        return new RateFactors(varieties, sites);
    }
}
