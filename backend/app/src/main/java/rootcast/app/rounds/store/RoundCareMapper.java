package rootcast.app.rounds.store;

import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import rootcast.app.rounds.Pests;
import rootcast.app.rounds.RecordedCare;
import rootcast.rounds.Arrival;

/** Rows to care and back. */
@Mapper
abstract class RoundCareMapper {

    @Mapping(
            target = "care",
            expression = "java(new rootcast.rounds.Care(row.item, rootcast.rounds.Task.valueOf(row.task), row.house,"
                    + " row.batch, row.dueOn, row.done, row.happenedAt, row.moistureLevel,"
                    + " row.ecMsPerCm))")
    @Mapping(target = "arrival", source = ".")
    @Mapping(target = "pests", source = ".")
    abstract RecordedCare care(RoundCareRow row);

    abstract Pests pests(RoundCareRow row);

    @Mapping(target = "item", source = "care.item")
    @Mapping(target = "task", source = "care.task")
    @Mapping(target = "house", source = "care.house")
    @Mapping(target = "batch", source = "care.batch")
    @Mapping(target = "dueOn", source = "care.dueOn")
    @Mapping(target = "done", source = "care.done")
    @Mapping(target = "happenedAt", source = "care.at")
    @Mapping(target = "moistureLevel", source = "care.level")
    @Mapping(target = "ecMsPerCm", source = "care.ecMsPerCm")
    @Mapping(target = "boxCondition", source = "arrival.condition")
    @Mapping(target = "boxC", source = "arrival.boxC")
    @Mapping(target = "standbyHours", source = "arrival.standbyHours")
    @Mapping(target = ".", source = "pests")
    @Mapping(target = "takenBackAt", ignore = true)
    @Mapping(target = "takenBackBy", ignore = true)
    @Mapping(target = "takenBackReason", ignore = true)
    abstract RoundCareRow row(RecordedCare recorded);

    @Nullable
    Arrival arrival(RoundCareRow row) {
        return row.boxCondition == null
                ? null
                : new Arrival(Arrival.Condition.valueOf(row.boxCondition), row.boxC, row.standbyHours);
    }

    List<UUID> ids(String text) {
        return text.isEmpty()
                ? List.of()
                : Arrays.stream(text.split(" ")).map(UUID::fromString).toList();
    }

    String text(List<UUID> ids) {
        return ids.stream().map(UUID::toString).collect(Collectors.joining(" "));
    }
}
