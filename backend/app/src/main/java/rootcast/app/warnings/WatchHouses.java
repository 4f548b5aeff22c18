package rootcast.app.warnings;

import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.locks.ReentrantLock;
import java.util.stream.Collectors;
import rootcast.app.node.NodeDuties;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.rounds.MeasuredHours;
import rootcast.app.rounds.SiteCare;
import rootcast.app.site.store.Places;
import rootcast.app.snapshot.Snapshots;
import rootcast.app.warnings.store.PendingDeliveries;
import rootcast.app.warnings.store.WarningStore;
import rootcast.climate.HourlySeries;
import rootcast.facts.FactPosition;
import rootcast.rounds.Care;
import rootcast.rounds.Rhythm;
import rootcast.site.Site;
import rootcast.warnings.HouseWatch;
import rootcast.warnings.QuietHours;
import rootcast.warnings.Warning;
import rootcast.warnings.WarningLog;
import rootcast.warnings.Watch;
import rootcast.warnings.Watched;

/**
 * Looks at the hours that have ended in every house and brings the log up to date.
 *
 * <p>What is found is worked out from facts each time; only the log remembers, so that a warning is given once. Writing
 * goes through {@link Once}: two nodes that find the same thing write it one after the other, and the second finds it
 * there.
 */
@ApplicationScoped
public class WatchHouses {

    /** How far back hours are looked at; a warning that lasts longer keeps its start from the log. */
    private static final Duration SPAN = Duration.ofDays(21);

    /** Between two looks at a site within one hour, unless somebody asks. */
    private static final Duration LOOK_AGAIN = Duration.ofMinutes(10);

    /** A node that looks by the clock keeps that duty for so long; one that dies leaves it to another. */
    private static final Duration DUTY = Duration.ofMinutes(3);

    /** What is found only after it was over, as after late readings, goes into the log and is sent to nobody. */
    private static final Duration OLDEST = SPAN;

    @Inject
    Places places;

    @Inject
    SiteCare siteCare;

    @Inject
    MeasuredHours hours;

    @Inject
    WarningStore store;

    @Inject
    PendingDeliveries pending;

    @Inject
    NodeDuties duties;

    @Inject
    WarningsConfig config;

    @Inject
    Instance<Channel> channels;

    @Inject
    Once once;

    @Inject
    InstantSource time;

    @Inject
    AnnounceWarnings announce;

    @Inject
    Snapshots snapshots;

    @Inject
    FactHead head;

    /** Of the hours before a warning so many are shown, and of a long one so many at its end. */
    private static final Duration BEFORE_IT = Duration.ofHours(12);

    private static final Duration MOST_SHOWN = Duration.ofDays(4);

    /**
     * The last look at a site.
     *
     * @param hour  that was running
     * @param facts position of the snapshot that it saw
     * @param care  position of the newest care, treatment or recipe then
     */
    private record Look(Instant at, long hour, FactPosition facts, FactPosition care) {

        boolean sawTheSameAs(Look next) {
            return hour == next.hour && facts.equals(next.facts) && care.equals(next.care);
        }
    }

    private final Map<String, Look> lookedAt = new ConcurrentHashMap<>();
    private final Map<String, HouseWatch> houses = new HashMap<>();
    private final ReentrantLock watching = new ReentrantLock();
    private volatile boolean started;

    void start(@Observes @Priority(200) StartupEvent event) {
        started = true;
    }

    @Scheduled(
            every = "${rootcast.warnings.watch-every:60s}",
            delayed = "60s",
            concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        if (started && duties.take(NodeDuties.WATCH_HOUSES, DUTY)) {
            places.sites().stream().filter(this::isTime).forEach(this::watch);
        }
    }

    /** Hours are looked at when one has ended; late readings and records of care can wait a little. */
    private boolean isTime(Site site) {
        Look last = lookedAt.get(site.code());
        Instant now = time.instant();
        return last == null || last.hour != HourlySeries.hourOf(now) || !now.isBefore(last.at.plus(LOOK_AGAIN));
    }

    /** Brings the log of a site up to date; cheap while nothing has changed that warnings rest on. */
    public void watch(Site site) {
        watching.lock();
        try {
            Instant now = time.instant();
            Look look = new Look(
                    now,
                    HourlySeries.hourOf(now),
                    snapshots.now().position(),
                    head.last().care());
            Look last = lookedAt.get(site.code());
            if (last == null || !last.sawTheSameAs(look)) {
                List<Warning> found = find(site, now);
                if (!changes(site, found, now).isEmpty()) {
                    write(site, found, now);
                }
            }
            lookedAt.put(site.code(), look);
        } finally {
            watching.unlock();
        }
    }

    private List<Warning> find(Site site, Instant now) {
        SiteCare.At at = siteCare.at(site, now);
        long until = HourlySeries.hourOf(now);
        long from = HourlySeries.hourOf(now.minus(SPAN));
        List<Warning> found = new ArrayList<>();
        for (String house : at.byHouse().keySet()) {
            Watched watched = watched(at, house, from, until);
            if (!watched.residents().isEmpty()) {
                found.addAll(houses.computeIfAbsent(house, code -> new HouseWatch())
                        .over(watched, Rhythm.USUAL, from, until, now));
            }
        }
        return found;
    }

    private Watched watched(SiteCare.At at, String house, long fromInclusive, long untilExclusive) {
        List<Watched.Resident> residents = at.byHouse().values().stream()
                .flatMap(List::stream)
                .filter(cared -> cared.snapshot().state().placements().stream()
                        .anyMatch(placement -> placement.house().equals(house)))
                .map(cared -> new Watched.Resident(cared.snapshot().state(), cared.recipe()))
                .toList();
        Set<String> batches = residents.stream()
                .map(resident -> resident.state().batch().id())
                .collect(Collectors.toSet());
        return new Watched(
                at.site(),
                house,
                hours.of(house, fromInclusive, untilExclusive),
                residents,
                at.cares().stream()
                        .filter(care -> care.house().equals(house) || batches.contains(care.batch()))
                        .toList(),
                at.treatments());
    }

    /** What a warning rests on, as far as its batches are still alive. */
    public SeenOfWarning seen(WrittenWarning written) {
        Warning warning = written.warning();
        Instant now = time.instant();
        Instant end = warning.until() == null ? now : warning.until();
        Instant begin = warning.since().minus(BEFORE_IT);
        Instant earliest = end.minus(MOST_SHOWN);
        long from = HourlySeries.hourOf(begin.isBefore(earliest) ? earliest : begin);
        long until = HourlySeries.hourOf(end) + 1;
        SiteCare.At at = siteCare.at(places.site(written.site()).orElseThrow(), now);
        return new SeenOfWarning(
                Watch.seen(watched(at, warning.house(), from, until), warning, from, until),
                at.cares().stream()
                        .filter(care -> warning.kind().settledBy().contains(care.task())
                                && (warning.batch() == null
                                        ? care.house().equals(warning.house())
                                        : warning.batch().equals(care.batch())))
                        .map(Care::at)
                        .max(Instant::compareTo)
                        .orElse(null));
    }

    private List<WarningLog.Change> changes(Site site, List<Warning> found, Instant now) {
        List<WarningLog.Logged> logged = store.of(site.code(), now.minus(SPAN), now.plusSeconds(1)).stream()
                .map(written -> new WarningLog.Logged(written.id(), written.warning()))
                .toList();
        Instant asOf = HourlySeries.startOf(HourlySeries.hourOf(now));
        return WarningLog.changes(logged, found, asOf, OLDEST);
    }

    private void write(Site site, List<Warning> found, Instant now) {
        List<UUID> ids = new ArrayList<>();
        once.write(OnceKey.none(), "warnings of " + site.code(), "", 200, () -> {
            for (WarningLog.Change change : changes(site, found, now)) {
                UUID id = change.isNew() ? UUID.randomUUID() : change.id();
                ids.add(id);
                if (change.isNew()) {
                    store.add(id, site.code(), change.warning(), now);
                    send(site, id, change.warning(), now);
                } else {
                    store.change(id, change.warning());
                }
            }
            return null;
        });
        if (!ids.isEmpty()) {
            announce.of(site.code(), List.copyOf(ids));
        }
    }

    private void send(Site site, UUID id, Warning warning, Instant now) {
        if (warning.until() == null) {
            Instant dueAt = new QuietHours(config.quietFrom(), config.quietUntil()).tellAt(now, site.zone());
            channels.stream().filter(Channel::isOn).forEach(channel -> pending.add(id, channel.name(), dueAt));
        }
    }
}
