package rootcast.app.treatments.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why a treatment was recorded by mistake. */
record ReversalWire(@NotBlank @Size(max = 500) String reason) {}
