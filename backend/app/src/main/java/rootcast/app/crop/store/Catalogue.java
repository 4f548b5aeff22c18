package rootcast.app.crop.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import rootcast.app.crop.ProfileVersion;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.problem.Thing;
import rootcast.crop.Calibration;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.facts.FactPosition;

/** What is grown and in what, as stored. */
@ApplicationScoped
@Transactional
public class Catalogue {

    @Inject
    TrayFormats trayFormats;

    @Inject
    Varieties varieties;

    @Inject
    Crops crops;

    @Inject
    ProfileVersions profiles;

    @Inject
    Calibrations calibrations;

    @Inject
    CropMapper mapper;

    @ApplicationScoped
    static class TrayFormats implements PanacheRepositoryBase<TrayFormatRow, String> {}

    @ApplicationScoped
    static class Varieties implements PanacheRepositoryBase<VarietyRow, String> {}

    @ApplicationScoped
    static class Crops implements PanacheRepositoryBase<CropRow, String> {}

    public List<TrayFormat> trayFormats() {
        return trayFormats.list("order by code").stream()
                .map(mapper::trayFormat)
                .toList();
    }

    public Optional<TrayFormat> trayFormat(String code) {
        return trayFormats.findByIdOptional(code).map(mapper::trayFormat);
    }

    public void save(TrayFormat format, FactPosition position) {
        trayFormats.getEntityManager().merge(mapper.row(format, position.value()));
    }

    public List<Variety> varieties() {
        return varieties.list("order by code").stream().map(mapper::variety).toList();
    }

    public Optional<Variety> variety(String code) {
        return varieties.findByIdOptional(code).map(mapper::variety);
    }

    public void save(Variety variety, FactPosition position) {
        varieties.getEntityManager().merge(mapper.row(variety, position.value()));
    }

    /** Every crop with the profile in force. */
    public List<SourcedCrop> crops() {
        return profiles.inForce(crops.list("order by code"));
    }

    /** The crop with the profile in force. */
    public Optional<SourcedCrop> crop(String code) {
        return crops.findByIdOptional(code).map(this::inForce);
    }

    private SourcedCrop inForce(CropRow row) {
        int version = profiles.lastAdoption(row.code).orElseThrow().versionNo;
        return profiles.sourced(row, version).orElseThrow();
    }

    /** The crop with the profile that was in force at an instant; before any was adopted, the first. */
    public Optional<SourcedCrop> profileInForce(String crop, Instant at) {
        return crops.findByIdOptional(crop).map(row -> profiles.sourced(row, profiles.inForce(crop, at), at));
    }

    /** Every version of the crop's profile, newest first. */
    public List<ProfileVersion> versions(String crop) {
        return crops.findByIdOptional(crop).map(profiles::of).orElse(List.of());
    }

    /** The crop's profile without anything that was ever learned. */
    public CropProfile stated(String crop) {
        CropRow row = crops.findById(crop);
        return profiles.stated(row);
    }

    /** From when which profile was in force, oldest first. */
    public NavigableMap<Instant, CropProfile> history(String crop) {
        CropRow row = crops.findById(crop);
        return profiles.history(row);
    }

    /** The newest entry of a finished batch that what is known of a version's ranges rests on. */
    public FactPosition calibratedUpTo(String crop, int version) {
        return calibrations.newestEntry(crop, version);
    }

    /** Stores what the record says of a version's ranges; it counts at once. */
    public void calibrate(
            String crop, int version, Calibration calibration, FactPosition newestEntry, Instant knownAt) {
        calibrations.add(crop, version, calibration, newestEntry, knownAt);
    }

    /** Stores a profile for somebody to adopt; gives its version. */
    public int propose(SourcedCrop sourced, String evidence, Instant recordedAt) {
        return profiles.add(sourced, ProfileVersion.Origin.LEARNED, evidence, recordedAt);
    }

    /** Puts a version in force. While a version is pinned no other can be. */
    public void adopt(String crop, int version, boolean pinned, Instant at) {
        if (profiles.sourced(crops.findById(crop), version).isEmpty()) {
            throw Problem.notFound(Thing.PROFILE_VERSION, crop + " " + version);
        }
        refuseWhilePinned(crop, version);
        profiles.adopt(crop, version, pinned, at);
    }

    private void refuseWhilePinned(String crop, int version) {
        profiles.lastAdoption(crop)
                .filter(last -> last.pinned && last.versionNo != version)
                .ifPresent(last -> {
                    throw new Problem(
                                    ProblemType.PROFILE_PINNED,
                                    "Version %d of '%s' is pinned since %s. Adopt it again without the pin first."
                                            .formatted(last.versionNo, crop, last.adoptedAt))
                            .with("pinned", last.versionNo)
                            .with("asked", version)
                            .with("since", last.adoptedAt);
                });
    }

    /** Stores the crop; a profile that differs from the one in force becomes its next version and is in force at once. */
    public SourcedCrop save(SourcedCrop sourced, FactPosition position, Instant recordedAt) {
        Crop crop = sourced.crop();
        Optional<SourcedCrop> before = crop(crop.code());
        CropRow row = new CropRow();
        row.code = crop.code();
        row.name = crop.name();
        row.positionNo = position.value();
        crops.getEntityManager().merge(row);
        if (before.isPresent() && saysTheSame(before.get(), sourced)) {
            return new SourcedCrop(crop, before.get().version(), sourced.sources(), sourced.note());
        }
        refuseWhilePinned(crop.code(), 0);
        crops.flush();
        int version = profiles.add(sourced, ProfileVersion.Origin.ENTERED, null, recordedAt);
        profiles.adopt(crop.code(), version, false, recordedAt);
        return new SourcedCrop(crop, version, sourced.sources(), sourced.note());
    }

    private static boolean saysTheSame(SourcedCrop before, SourcedCrop after) {
        return before.crop()
                        .profile()
                        .calibrated(Calibration.NONE)
                        .equals(after.crop().profile())
                && before.sources().equals(after.sources())
                && Objects.equals(before.note(), after.note());
    }
}
