package rootcast.site;

import org.jspecify.annotations.Nullable;

/**
 * A climate compartment with its own sensors.
 *
 * @param site            code of the site it stands on
 * @param mediumSetpointC medium temperature the bottom heat is set to, °C; null if it has none
 */
public record House(
        String code, String site, String name, @Nullable Double mediumSetpointC) {}
