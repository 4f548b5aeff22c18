package rootcast.app.rounds.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.Size;

/** Why an item was closed by mistake. */
record UndoWire(@NotBlank @Size(max = 500) String reason) {}
