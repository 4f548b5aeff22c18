package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.SortedSet;
import java.util.TreeSet;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingQuality;

/**
 * Hours of the medium as they were known at an instant, where that differs from now: judged again from the readings and
 * the words on flags that were recorded by then. Hours whose raw readings were purged stay as they are.
 */
@ApplicationScoped
public class HoursThen {

    @Inject
    Readings readings;

    @Inject
    Flags flags;

    public List<Readings.Hour> of(Collection<String> houses, Instant recordedBy) {
        List<Readings.Hour> hours = new ArrayList<>();
        for (String house : houses) {
            HouseQuantity of = new HouseQuantity(house, Quantity.MEDIUM_TEMPERATURE);
            SortedSet<Instant> unknown = new TreeSet<>(readings.measuredButRecordedAfter(of, recordedBy));
            unknown.addAll(flags.spokenOfAfter(of, recordedBy));
            if (!unknown.isEmpty()) {
                hours.addAll(judged(of, ReadingQuality.reachedFrom(unknown), recordedBy));
            }
        }
        return hours;
    }

    private List<Readings.Hour> judged(HouseQuantity of, SortedSet<Long> reached, Instant recordedBy) {
        long from = ReadingQuality.neededFrom(reached.first());
        long until = reached.last() + 2;
        Instant since = HourlySeries.startOf(from);
        Instant end = HourlySeries.startOf(until);
        HouseWindow window = new HouseWindow(of, from, until);
        readings.eachOf(of, since, end, recordedBy, window::add);
        flags.overridden(of, since, end, recordedBy).forEach(window::override);
        flags.broughtIn(of, since, end, recordedBy)
                .forEach(reading -> window.bringIn(reading.sensor(), reading.at(), reading.value()));
        List<Readings.Hour> hours = new ArrayList<>();
        readings.eachHourOf(of, since, end, now -> {
            if (!now.settled() && reached.contains(HourlySeries.hourOf(now.hourStart()))) {
                ReadingQuality.Hour then = window.judged(HourlySeries.hourOf(now.hourStart()));
                hours.add(new Readings.Hour(
                        of.house(),
                        of.quantity(),
                        now.hourStart(),
                        then.totalMicro(),
                        then.readings(),
                        then.leftOut(),
                        false,
                        true));
            }
        });
        return hours;
    }
}
