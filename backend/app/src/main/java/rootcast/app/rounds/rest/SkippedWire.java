package rootcast.app.rounds.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import org.jspecify.annotations.Nullable;

/** @param happenedAt now if left out */
record SkippedWire(
        @NotBlank @Size(max = 500) String reason, @Nullable OffsetDateTime happenedAt) {}
