package rootcast.app.demo;

import java.util.List;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * Where the demo goes: the application hands everything to the use case that a person's entry would go through, so that the
 * same rules hold. Every call may come again after an interrupted load and must then change nothing.
 */
public interface DemoSink {

    void site(Site site);

    void house(House house);

    void trayFormat(TrayFormat format);

    void crop(CropSeed crop);

    void variety(Variety variety);

    /** Some thousand readings, oldest first. */
    void readings(List<DemoReading> readings);

    /** Some dozen facts in the order they were recorded: an entry comes after its batch and what it reverses. */
    void facts(List<DemoFact> facts);

    /** @return false if it was refused: shipments for it then come without it */
    boolean order(DemoOrder order);
}
