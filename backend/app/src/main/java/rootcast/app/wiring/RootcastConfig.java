package rootcast.app.wiring;

import io.smallrye.config.ConfigMapping;
import io.smallrye.config.WithDefault;
import java.time.Duration;
import java.util.Optional;

/** Settings of the application as a whole. */
@ConfigMapping(prefix = "rootcast")
public interface RootcastConfig {

    /** Folder of the embedded database. Only read when the database is H2. */
    @WithDefault(".rootcast/data")
    String data();

    /** How long a read waits for this node's own acknowledged writes before it answers with an older snapshot. */
    @WithDefault("1s")
    Duration readsWait();

    /** What the business is called, on papers for customers. */
    Optional<String> business();

    /** Bearer token with every right, for scripts. Without one, no token is accepted. */
    Optional<String> token();

    TrackRecord trackRecord();

    /** When the track record is made. */
    interface TrackRecord {

        /** How often it is seen whether it should be made again; {@code off} for only when somebody asks. */
        @WithDefault("60s")
        String makeEvery();
    }

    Calibration calibration();

    /** When crops are held against the record of their finished batches. */
    interface Calibration {

        /** How often it is seen whether a finished batch has brought something new; {@code off} for never. */
        @WithDefault("10m")
        String makeEvery();
    }
}
