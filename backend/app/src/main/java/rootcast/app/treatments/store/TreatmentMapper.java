package rootcast.app.treatments.store;

import java.time.Duration;
import org.mapstruct.Mapper;
import org.mapstruct.Mapping;
import rootcast.app.treatments.AppliedTreatment;
import rootcast.app.treatments.TreatmentDetails;

/** Rows to treatments and back. */
@Mapper
abstract class TreatmentMapper {

    private static final double MILLIS_PER_HOUR = 3_600_000;

    @Mapping(
            target = "treatment",
            expression =
                    "java(new rootcast.rounds.Treatment(row.id, row.house, row.batch,"
                            + " rootcast.rounds.Treatment.Purpose.valueOf(row.purpose), row.product, row.appliedAt, hours(row.reentryHours)))")
    @Mapping(target = "details", source = ".")
    abstract AppliedTreatment treatment(TreatmentRow row);

    abstract TreatmentDetails details(TreatmentRow row);

    @Mapping(target = ".", source = "details")
    @Mapping(target = "id", source = "treatment.id")
    @Mapping(target = "house", source = "treatment.house")
    @Mapping(target = "batch", source = "treatment.batch")
    @Mapping(target = "purpose", source = "treatment.purpose")
    @Mapping(target = "product", source = "treatment.product")
    @Mapping(target = "appliedAt", source = "treatment.appliedAt")
    @Mapping(target = "reentryHours", source = "treatment.reentry")
    abstract TreatmentRow row(AppliedTreatment applied);

    Duration hours(double hours) {
        return Duration.ofMillis(Math.round(hours * MILLIS_PER_HOUR));
    }

    double hours(Duration duration) {
        return duration.toMillis() / MILLIS_PER_HOUR;
    }
}
