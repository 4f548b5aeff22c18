package rootcast.app.warnings;

import java.util.List;
import java.util.UUID;

/** Says, after they are committed, that warnings of a site are new, have changed or have ended. */
public record WarningsChanged(String site, List<UUID> ids) {}
