package rootcast.availability;

import java.time.LocalDate;
import java.util.List;
import rootcast.outlook.World;

/** How many trays of a lot can leave, in each of the worlds that may come. */
@FunctionalInterface
public interface TraysByWorld {

    /** @param crop code of the lot's crop, whose days may be out for all of its lots alike */
    OfLot of(String crop);

    /** For one thread. */
    @FunctionalInterface
    interface OfLot {

        /** Trays on each of the days. */
        int[] trays(World world, List<LocalDate> days);
    }
}
