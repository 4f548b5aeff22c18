package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import rootcast.app.climate.store.Flags;
import rootcast.app.once.FactHead;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;

/**
 * A person says that flags are wrong, or takes that back. Nothing is deleted: the newest word counts, and the hours that
 * the flags reach are made anew.
 */
@ApplicationScoped
public class OverrideFlag {

    private static final int MOST = 10_000;

    @Inject
    Rights rights;

    @Inject
    Places places;

    @Inject
    Flags flags;

    @Inject
    HouseWindows windows;

    @Inject
    FactHead head;

    /** How many flags were spoken of. */
    public record Said(int flags, boolean overridden) {}

    /**
     * To be called inside {@link rootcast.app.once.Once}.
     *
     * @param toInclusive flags of the same sensor and kind from the one named up to here are meant, too
     */
    public Said say(UUID id, boolean overridden, String reason, Instant toInclusive, Instant now) {
        Flags.Shown named = flags.one(id).orElseThrow(() -> Problem.notFound(Thing.FLAG, id.toString()));
        rights.at(places.house(named.of().house()).orElseThrow().site(), Right.SET_UP);
        List<Flags.Shown> meant = flags
                .shown(
                        named.of(),
                        named.flag().at(),
                        later(named.flag().at(), toInclusive).plusNanos(1_000),
                        MOST)
                .stream()
                .filter(each -> each.flag().kind() == named.flag().kind()
                        && each.flag().sensor().equals(named.flag().sensor())
                        && (each.id().equals(id)
                                || !each.flag().at().equals(named.flag().at())))
                .toList();
        windows.catchUp();
        windows.forget(named.of());
        FactPosition position = head.next();
        meant.forEach(each -> flags.say(each, new Flags.Word(overridden, reason, now), position));
        List<Instant> moments = meant.stream().map(each -> each.flag().at()).toList();
        HouseWindow window = windows.around(named.of(), moments, now);
        if (moments.stream().anyMatch(window::isSettled)) {
            throw Problem.notAllowed("flag", id.toString(), Fault.HOUR_PURGED);
        }
        JudgedHours judged = new JudgedHours();
        windows.judge(window, moments, judged);
        windows.store(judged, position);
        return new Said(meant.size(), overridden);
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }
}
