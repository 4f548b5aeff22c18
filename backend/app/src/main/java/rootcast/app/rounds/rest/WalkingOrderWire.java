package rootcast.app.rounds.rest;

import jakarta.validation.constraints.NotNull;
import java.util.List;

/** Houses of a site in the order in which people walk through them; those left out come last. */
record WalkingOrderWire(@NotNull List<@NotNull String> houses) {}
