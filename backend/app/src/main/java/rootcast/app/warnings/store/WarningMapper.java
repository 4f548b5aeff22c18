package rootcast.app.warnings.store;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import org.mapstruct.MappingTarget;
import rootcast.app.warnings.WrittenWarning;
import rootcast.warnings.Measured;
import rootcast.warnings.Warning;

/** Rows to warnings and back. */
@Mapper
abstract class WarningMapper {

    @Mapping(target = "warning", source = "row")
    @Mapping(target = "deliveries", source = "deliveries")
    abstract WrittenWarning written(WarningRow row, List<WarningDeliveryRow> deliveries);

    @Mapping(target = "measured", source = "quantity")
    @Mapping(target = "since", source = "sinceAt")
    @Mapping(target = "until", source = "untilAt")
    @Mapping(target = "limit", source = "limitValue")
    abstract Warning warning(WarningRow row);

    @Mapping(target = "channel", source = "id.channel")
    abstract WrittenWarning.Delivery delivery(WarningDeliveryRow row);

    @Mapping(target = "id", ignore = true)
    @Mapping(target = "site", ignore = true)
    @Mapping(target = "firstSeenAt", ignore = true)
    @Mapping(target = "acknowledgedAt", ignore = true)
    @Mapping(target = "acknowledgedBy", ignore = true)
    @Mapping(target = "acknowledgement", ignore = true)
    @Mapping(target = "quantity", source = "measured")
    @Mapping(target = "sinceAt", source = "since")
    @Mapping(target = "untilAt", source = "until")
    @Mapping(target = "limitValue", source = "limit")
    abstract void fill(@MappingTarget WarningRow row, Warning warning);

    @Nullable
    Measured measured(@Nullable String quantity) {
        return Arrays.stream(Measured.values())
                .filter(measured -> measured.wireName().equals(quantity))
                .findFirst()
                .orElse(null);
    }

    @Nullable
    String quantity(@Nullable Measured measured) {
        return measured == null ? null : measured.wireName();
    }

    List<String> batches(String text) {
        return text.isEmpty() ? List.of() : List.of(text.split(" "));
    }

    String text(List<String> batches) {
        return String.join(" ", batches);
    }
}
