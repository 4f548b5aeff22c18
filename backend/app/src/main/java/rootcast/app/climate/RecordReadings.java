package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rootcast.app.climate.store.Readings;
import rootcast.app.once.FactHead;
import rootcast.climate.Quantity;

/**
 * Keeps each reading once. A second value for the same house, quantity and moment is refused and the first one stays:
 * which of two is right is for a person to say.
 */
@ApplicationScoped
public class RecordReadings {

    @Inject
    Readings readings;

    @Inject
    FactHead head;

    /** A reading with its place in the request. */
    public record Numbered(int index, HouseReading reading) {}

    public record Refused(int index, String reason) {}

    /** @param refused other than those refused before */
    public record Recorded(int accepted, int duplicates, List<Refused> refused) {}

    private record Series(String house, Quantity quantity) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public Recorded record(List<Numbered> wanted, Instant recordedAt) {
        Map<Series, Map<Instant, Double>> known = known(wanted);
        List<HouseReading> added = new ArrayList<>();
        List<Refused> refused = new ArrayList<>();
        int duplicates = 0;
        for (Numbered numbered : wanted) {
            HouseReading reading = numbered.reading();
            Map<Instant, Double> series = known.get(new Series(reading.house(), reading.quantity()));
            Double before = series.putIfAbsent(reading.at(), reading.celsius());
            if (before == null) {
                added.add(reading);
            } else if (before == reading.celsius()) {
                duplicates++;
            } else {
                refused.add(new Refused(
                        numbered.index(),
                        "another value, %s °C, is stored for that house, quantity and moment; it stays"
                                .formatted(before)));
            }
        }
        if (!added.isEmpty()) {
            readings.add(added, head.next(), recordedAt);
        }
        return new Recorded(added.size(), duplicates, refused);
    }

    private Map<Series, Map<Instant, Double>> known(List<Numbered> wanted) {
        record Span(Instant from, Instant to) {
            Span with(Instant at) {
                return new Span(at.isBefore(from) ? at : from, at.isAfter(to) ? at : to);
            }
        }
        Map<Series, Span> spans = new HashMap<>();
        for (Numbered numbered : wanted) {
            HouseReading reading = numbered.reading();
            spans.merge(
                    new Series(reading.house(), reading.quantity()),
                    new Span(reading.at(), reading.at()),
                    (span, one) -> span.with(one.from()));
        }
        Map<Series, Map<Instant, Double>> known = new HashMap<>();
        spans.forEach((series, span) ->
                known.put(series, readings.stored(series.house(), series.quantity(), span.from(), span.to())));
        return known;
    }
}
