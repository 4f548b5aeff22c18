package rootcast.app.learning;

import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.InstantSource;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jboss.logging.Logger;
import rootcast.app.crop.ProfileVersion;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.node.NodeDuties;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.trackrecord.TrackRecords;
import rootcast.crop.Calibration;
import rootcast.crop.CropProfile;
import rootcast.facts.FactPosition;

/**
 * Holds the profiles in force against the record of finished batches, in the background, whenever a batch that was ready has a new entry
 * or another version is in force.
 *
 * <p>What it finds is a fact like any change of the set-up: it has a position, every node takes it in, and it counts from when it was
 * known. One node works at a time.
 */
@ApplicationScoped
public class CalibrateCrops {

    private static final Logger LOG = Logger.getLogger(CalibrateCrops.class);

    /** Longer than a round over many crops takes. */
    private static final Duration DUTY = Duration.ofMinutes(30);

    @Inject
    Catalogue catalogue;

    @Inject
    LearnCrop learnCrop;

    @Inject
    TrackRecords trackRecords;

    @Inject
    NodeDuties duties;

    @Inject
    Once once;

    @Inject
    FactHead head;

    @Inject
    InstantSource time;

    /** By crop: versions that were held against the record up to a position and found as they stood. */
    private final Map<String, Done> done = new ConcurrentHashMap<>();

    private record Done(int version, FactPosition newestEntry) {}

    @Scheduled(
            every = "${rootcast.calibration.make-every:10m}",
            delayed = "2m",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        if (duties.take(NodeDuties.CALIBRATE_CROPS, DUTY)) {
            calibrate();
        }
    }

    /** By whoever has the duty: each crop that has something new on record. One that cannot be worked out does not keep others waiting. */
    public void calibrate() {
        for (SourcedCrop crop : catalogue.crops()) {
            try {
                calibrate(crop.crop().code(), crop.version(), crop.crop().profile());
            } catch (RuntimeException fault) {
                LOG.warnf(
                        fault,
                        "%s could not be held against its record",
                        crop.crop().code());
            }
        }
    }

    private void calibrate(String crop, int version, CropProfile profile) {
        FactPosition newest = trackRecords.newestEntry(crop);
        Done now = new Done(version, newest);
        if (now.equals(done.get(crop))
                || catalogue.calibratedUpTo(crop, version).equals(newest)) {
            return;
        }
        Calibration found = trackRecords.calibration(crop, foretoldBy(crop));
        if (found.equals(profile.calibration()) || written(crop, version, found, newest)) {
            done.put(crop, now);
        }
    }

    /** A version that was learned is learned again without the batches that it knows; others it can be asked about as it is. */
    private Function<String, CropProfile> foretoldBy(String code) {
        ProfileVersion inForce = catalogue.versions(code).stream()
                .filter(ProfileVersion::inForce)
                .findFirst()
                .orElseThrow();
        CropProfile profile = inForce.sourced().crop().profile();
        Map<String, CropProfile> without = inForce.origin() == ProfileVersion.Origin.LEARNED
                ? learnCrop.learnedWithout(code, WeighVersion.FOLDS, inForce.createdAt(), time.instant())
                : Map.of();
        return batch -> without.getOrDefault(batch, profile);
    }

    /** Unless the duty is another's by now, or another version is in force. */
    private boolean written(String crop, int version, Calibration calibration, FactPosition newest) {
        boolean[] written = new boolean[1];
        once.writeBulk(OnceKey.none(), "calibration of " + crop, "", 200, () -> {
            int inForce = catalogue.crop(crop).orElseThrow().version();
            written[0] = duties.isHeldUntilCommit(NodeDuties.CALIBRATE_CROPS) && inForce == version;
            if (written[0]) {
                catalogue.calibrate(crop, version, calibration, newest, time.instant());
                head.nextForSetup();
            }
            return null;
        });
        return written[0];
    }
}
