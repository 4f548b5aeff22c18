package rootcast.app.crop.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rootcast.app.crop.SourcedCrop;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.ledger.LedgerPosition;

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
    Profiles profiles;

    @Inject
    ProfileStages profileStages;

    @Inject
    CropMapper mapper;

    @ApplicationScoped
    static class TrayFormats implements PanacheRepositoryBase<TrayFormatRow, String> {}

    @ApplicationScoped
    static class Varieties implements PanacheRepositoryBase<VarietyRow, String> {}

    @ApplicationScoped
    static class Crops implements PanacheRepositoryBase<CropRow, String> {}

    @ApplicationScoped
    static class Profiles implements PanacheRepositoryBase<CropProfileRow, CropProfileRow.Id> {}

    @ApplicationScoped
    static class ProfileStages implements PanacheRepositoryBase<CropProfileStageRow, CropProfileStageRow.Id> {}

    public List<TrayFormat> trayFormats() {
        return trayFormats.list("order by code").stream()
                .map(mapper::trayFormat)
                .toList();
    }

    public Optional<TrayFormat> trayFormat(String code) {
        return trayFormats.findByIdOptional(code).map(mapper::trayFormat);
    }

    public void save(TrayFormat format, LedgerPosition position) {
        trayFormats.getEntityManager().merge(mapper.row(format, position.value()));
    }

    public List<Variety> varieties() {
        return varieties.list("order by code").stream().map(mapper::variety).toList();
    }

    public Optional<Variety> variety(String code) {
        return varieties.findByIdOptional(code).map(mapper::variety);
    }

    public void save(Variety variety, LedgerPosition position) {
        varieties.getEntityManager().merge(mapper.row(variety, position.value()));
    }

    public List<SourcedCrop> crops() {
        Map<String, CropProfileRow> newest = profiles.listAll().stream()
                .collect(Collectors.toMap(
                        row -> row.id.crop(), row -> row, (a, b) -> a.id.versionNo() > b.id.versionNo() ? a : b));
        Map<CropProfileRow.Id, List<CropProfileStageRow>> stages = profileStages.listAll().stream()
                .collect(Collectors.groupingBy(row -> new CropProfileRow.Id(row.id.crop(), row.id.versionNo())));
        return crops.list("order by code").stream()
                .map(row -> sourced(row, newest.get(row.code), stages.get(newest.get(row.code).id)))
                .toList();
    }

    public Optional<SourcedCrop> crop(String code) {
        return crops.findByIdOptional(code).map(row -> {
            CropProfileRow newest = profiles.find("id.crop = ?1 order by id.versionNo desc", code)
                    .firstResult();
            return sourced(
                    row, newest, profileStages.list("id.crop = ?1 and id.versionNo = ?2", code, newest.id.versionNo()));
        });
    }

    /** Stores the crop; a profile that differs from the one in force becomes its next version. */
    public SourcedCrop save(SourcedCrop sourced, LedgerPosition position, Instant recordedAt) {
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
        int version = before.map(SourcedCrop::version).orElse(0) + 1;
        profiles.persist(
                mapper.row(crop.profile(), new CropProfileRow.Id(crop.code(), version), sourced.note(), recordedAt));
        profiles.flush();
        for (StageProfile stage : crop.profile().stages()) {
            profileStages.persist(mapper.row(
                    stage,
                    new CropProfileStageRow.Id(
                            crop.code(), version, stage.stage().name()),
                    sourced.sources().get(stage.stage())));
        }
        return new SourcedCrop(crop, version, sourced.sources(), sourced.note());
    }

    private static boolean saysTheSame(SourcedCrop before, SourcedCrop after) {
        return before.crop().profile().equals(after.crop().profile())
                && before.sources().equals(after.sources())
                && java.util.Objects.equals(before.note(), after.note());
    }

    private SourcedCrop sourced(CropRow row, CropProfileRow profile, List<CropProfileStageRow> stages) {
        List<CropProfileStageRow> inOrder = new ArrayList<>(stages);
        inOrder.sort(Comparator.comparing(stage -> Stage.valueOf(stage.id.stage())));
        Map<Stage, String> sources = new EnumMap<>(Stage.class);
        inOrder.stream()
                .filter(stage -> stage.source != null)
                .forEach(stage -> sources.put(Stage.valueOf(stage.id.stage()), stage.source));
        CropProfile checked =
                new CropProfile(inOrder.stream().map(mapper::stage).toList(), profile.rateSpread, profile.holdDays);
        return new SourcedCrop(new Crop(row.code, row.name, checked), profile.id.versionNo(), sources, profile.note);
    }
}
