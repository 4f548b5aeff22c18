package rootcast.app.warnings.rest;

import jakarta.validation.constraints.Size;
import org.jspecify.annotations.Nullable;

/** @param text what is being done about it, if one likes to say */
record AcknowledgementWire(@Nullable @Size(max = 2000) String text) {}
