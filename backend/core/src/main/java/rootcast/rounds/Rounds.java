package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.site.Site;

/**
 * The round of a house on a day: what is due by then, and what was closed on it.
 *
 * <p>Everything is computed from facts and the outlook, so nothing has to be scheduled beforehand, and two nodes give
 * the same list with the same ids. What fell due earlier and was not closed stays on the list as carried over.
 */
public final class Rounds {

    private Rounds() {}

    /**
     * @param on  the day, by the site's calendar
     * @param now decides whether the house is closed after a treatment
     */
    public static List<RoundItem> of(Site site, HouseCare house, Rhythm rhythm, LocalDate on, Instant now) {
        Set<String> closed = house.cares().stream().map(Care::item).collect(Collectors.toSet());
        Optional<Treatment> closing = Treatment.closing(house.treatments(), house.house(), now);
        Instant endOfDay = site.startOf(on.plusDays(1));
        Stream<Due> wanted = Stream.concat(
                HouseTasks.all(site, house, rhythm, endOfDay),
                house.batches().stream().flatMap(batch -> new BatchTasks(site, batch, house, rhythm, endOfDay).all()));
        List<RoundItem> items = new ArrayList<>();
        wanted.filter(due -> !due.dueOn().isAfter(on) && !closed.contains(due.id()))
                .map(due -> open(house.house(), due, on, closing.orElse(null)))
                .forEach(items::add);
        house.cares().stream()
                .filter(care -> care.house().equals(house.house())
                        && site.dayOf(care.at()).equals(on))
                .map(Rounds::closed)
                .forEach(items::add);
        items.sort(asWalked(house));
        return items;
    }

    /**
     * The house itself, then its batches, the oldest first; of a batch no longer there last. Whether a check is closed
     * makes no difference: one that is taken back comes to where it was, and nothing moves under a thumb.
     */
    private static Comparator<RoundItem> asWalked(HouseCare house) {
        List<String> batches = house.batches().stream()
                .sorted(Comparator.comparing(BatchCare::stuckAt).thenComparing(BatchCare::id))
                .map(BatchCare::id)
                .toList();
        return Comparator.comparingInt((RoundItem item) -> item.batch() == null
                        ? -1
                        : batches.contains(item.batch()) ? batches.indexOf(item.batch()) : batches.size())
                .thenComparing(RoundItem::task)
                .thenComparing(RoundItem::dueOn)
                .thenComparing(RoundItem::id);
    }

    private static RoundItem open(String house, Due due, LocalDate on, @Nullable Treatment closing) {
        RoundItem.State state = closing != null
                ? RoundItem.State.BLOCKED
                : due.dueOn().isBefore(on) ? RoundItem.State.CARRIED_OVER : RoundItem.State.DUE;
        return new RoundItem(
                due.id(), house, due.batch(), due.task(), due.dueOn(), state, due.why(), due.to(), closing);
    }

    private static RoundItem closed(Care care) {
        return new RoundItem(
                care.item(),
                care.house(),
                care.batch(),
                care.task(),
                care.dueOn(),
                care.done() ? RoundItem.State.DONE : RoundItem.State.SKIPPED,
                null,
                List.of(),
                null);
    }
}
