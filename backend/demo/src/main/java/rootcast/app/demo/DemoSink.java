package rootcast.app.demo;

import java.util.List;
import rootcast.app.crop.CropSeed;

/**
 * Where the demo's facts go: the application hands each to the use case that a person's entry would go through, so that
 * the same rules hold. A call is one transaction: one for every fact took most of the first start. Every call may come again after an interrupted load and must then change nothing.
 */
public interface DemoSink {

    /** Sites, houses, tray formats, crops and varieties, all together or none. */
    void setUp(DemoSetup setup, List<CropSeed> crops);

    /** Some thousand readings, oldest first. */
    void readings(List<DemoReading> readings);

    /** In the order they were stuck, all together or none. */
    void batches(List<DemoBatch> batches);

    /** In the order they were recorded, each after its batch and after the entry it reverses; all together or none. */
    void entries(List<DemoEntry> entries);

    /** @return false if it was refused: shipments for it then come without it */
    boolean order(DemoOrder order);

    /** Round items that were done, each after its batch. */
    void cares(List<DemoCare> cares);
}
