package rootcast.app.demo;

import java.util.List;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * Where the demo's facts go: the application hands each to the use case that a person's entry would go through, so that
 * the same rules hold. Every call may come again after an interrupted load and must then change nothing.
 */
public interface DemoSink {

    void site(Site site);

    void house(House house);

    void trayFormat(TrayFormat format);

    void crop(CropSeed crop);

    void variety(Variety variety);

    /** Some thousand readings, oldest first. */
    void readings(List<DemoReading> readings);

    void batch(DemoBatch batch);

    /** In the order they were recorded, each after its batch and after the entry it reverses. */
    void entry(DemoEntry entry);

    /** @return false if it was refused: shipments for it then come without it */
    boolean order(DemoOrder order);

    /** Round items that were done, each after its batch. */
    void cares(List<DemoCare> cares);
}
