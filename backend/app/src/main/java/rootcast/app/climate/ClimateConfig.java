package rootcast.app.climate;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;

/** How long readings are kept. */
@ConfigMapping(prefix = "rootcast.climate")
public interface ClimateConfig {

    /**
     * Days that a raw reading is kept after it came. The hours it made stay for ever; a reading for an hour whose raw
     * readings are gone is refused. 92: a crop of eight weeks can be looked at to the minute when it ships.
     */
    @WithDefault("92")
    int rawDays();

    /** How often what a node has counted of its ingest is written down; {@code off} for only at its end. */
    @WithDefault("5s")
    String flushEvery();
}
