package rootcast.app.crop.store;

import java.time.Instant;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;

/** Rows to the core's words and back. */
@Mapper
interface CropMapper {

    TrayFormat trayFormat(TrayFormatRow row);

    TrayFormatRow row(TrayFormat trayFormat, long positionNo);

    Variety variety(VarietyRow row);

    VarietyRow row(Variety variety, long positionNo);

    @Mapping(target = "stage", source = "id.stage")
    @Mapping(target = "cardinals.form", source = "form")
    @Mapping(target = "cardinals.minC", source = "minC")
    @Mapping(target = "cardinals.optimumC", source = "optimumC")
    @Mapping(target = "cardinals.maxC", source = "maxC")
    @Mapping(target = "cardinals.referenceC", source = "referenceC")
    StageProfile stage(CropProfileStageRow row);

    @Mapping(target = "id", source = "id")
    @Mapping(target = "form", source = "stage.cardinals.form")
    @Mapping(target = "minC", source = "stage.cardinals.minC")
    @Mapping(target = "optimumC", source = "stage.cardinals.optimumC")
    @Mapping(target = "maxC", source = "stage.cardinals.maxC")
    @Mapping(target = "referenceC", source = "stage.cardinals.referenceC")
    CropProfileStageRow row(StageProfile stage, CropProfileStageRow.Id id, String source);

    @Mapping(target = ".", source = "profile.variation")
    @Mapping(target = "id", source = "id")
    CropProfileRow row(
            CropProfile profile, CropProfileRow.Id id, String note, String origin, String evidence, Instant recordedAt);
}
