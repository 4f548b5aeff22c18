package rootcast.app.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Parts readings into runs without a long silence, so that two far apart do not ask for all that lies between. */
final class Nearby {

    private static final Duration SILENCE = Duration.ofDays(2);

    private Nearby() {}

    static List<List<RecordReadings.Numbered>> grouped(List<RecordReadings.Numbered> readings) {
        List<RecordReadings.Numbered> ordered = new ArrayList<>(readings);
        ordered.sort(Comparator.comparing(each -> each.reading().at())); // stable: of two at one moment the first stays
        List<List<RecordReadings.Numbered>> groups = new ArrayList<>();
        Instant last = Instant.MIN;
        for (RecordReadings.Numbered each : ordered) {
            if (groups.isEmpty() || last.plus(SILENCE).isBefore(each.reading().at())) {
                groups.add(new ArrayList<>());
            }
            groups.get(groups.size() - 1).add(each);
            last = each.reading().at();
        }
        return groups;
    }
}
