package rootcast.app.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rootcast.crop.CropRecipe;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.ledger.What;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.rounds.BatchCare;
import rootcast.rounds.Care;
import rootcast.rounds.HouseCare;
import rootcast.rounds.MoveOn;
import rootcast.rounds.Rhythm;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Rounds;
import rootcast.rounds.Task;
import rootcast.site.Site;

/**
 * The rounds that people of the demo walked before it starts: morning and afternoon of every day they ask for what the
 * application's own rounds ask, and do it. The round of the start's own day is left to whoever looks in, and so are the
 * few things of seed/demo/rounds.csv, so that what is overdue or warned of stands out.
 */
final class DemoRounds {

    private static final LocalTime MORNING = LocalTime.of(8, 0);
    private static final LocalTime AFTERNOON = LocalTime.of(16, 0);
    private static final int SECONDS_AN_ITEM = 40;

    /** Looks and moves are entries of the batches' own stories. */
    private static final Set<Task> TOLD_ELSEWHERE = EnumSet.of(Task.LOOK_CALLUS, Task.LOOK_ROOT, Task.READY, Task.MOVE);

    private static final String STAYS = "is shipped from here";

    /** Moisture is looked at every day; older than this it would tell nothing and only fill the tables. */
    private static final int MOISTURE_DAYS = 4;

    private static final DateRange UNKNOWN =
            new DateRange(DateDistribution.NEVER, DateDistribution.NEVER, DateDistribution.NEVER);

    private final DemoSetup setup;
    private final List<RoundStory> stories;
    private final Instant startAt;
    private final List<Walker> batches;
    private final Map<String, List<Care>> closed = new HashMap<>();
    private final List<DemoCare> cares = new ArrayList<>();
    private final List<DemoEntry> counts = new ArrayList<>();

    /** What was done on the rounds, and the counts among it as entries, each as they happened. */
    record Walked(List<DemoCare> cares, List<DemoEntry> counts) {}

    /** A batch as the rounds see it. */
    private record Walker(BatchFold fold, CropRecipe recipe, boolean stays, Function<String, Optional<MoveOn>> next) {

        Optional<BatchCare> at(Instant at) {
            return fold.stateAt(at).filter(BatchState::isLive).map(this::care);
        }

        private BatchCare care(BatchState state) {
            return new BatchCare(
                    state,
                    recipe,
                    new BatchCare.Expected(UNKNOWN, UNKNOWN, UNKNOWN),
                    null,
                    next.apply(state.house())
                            .flatMap(next -> next.adviceFor(state, Map.of()))
                            .orElse(null));
        }
    }

    private DemoRounds(DemoSetup setup, List<RoundStory> stories, List<Walker> batches, Instant startAt) {
        this.setup = setup;
        this.stories = stories;
        this.batches = batches;
        this.startAt = startAt;
    }

    /**
     * @param recipes by crop
     * @param staying keys of batches that their growers keep where they were stuck
     */
    static Walked walked(
            DemoSetup setup,
            List<RoundStory> stories,
            Map<String, CropRecipe> recipes,
            List<BatchStory.Told> told,
            Set<String> staying,
            Instant startAt) {
        Function<DemoBatch, CropRecipe> recipeOf =
                batch -> recipes.get(setup.variety(batch.variety()).crop());
        List<Walker> batches = told.stream()
                .map(each -> new Walker(
                        foldOf(each),
                        recipeOf.apply(each.batch()),
                        staying.contains(each.batch().key()),
                        house -> setup.house(house).next(startAt)))
                .toList();
        DemoRounds rounds = new DemoRounds(setup, stories, batches, startAt);
        setup.sites().forEach(place -> rounds.walk(place.site()));
        return rounds.withStories();
    }

    private void walk(Site site) {
        LocalDate today = site.dayOf(startAt);
        LocalDate day = batches.stream()
                .map(batch -> site.dayOf(batch.fold().state().batch().stuckAt()))
                .min(LocalDate::compareTo)
                .orElse(today);
        for (; day.isBefore(today); day = day.plusDays(1)) {
            walk(site, day, MORNING);
            walk(site, day, AFTERNOON);
        }
    }

    private void walk(Site site, LocalDate day, LocalTime time) {
        Instant at = day.atTime(time).atZone(site.zone()).toInstant();
        for (Map.Entry<String, List<BatchCare>> house : housesOf(site, at).entrySet()) {
            for (RoundItem item : open(site, house.getKey(), house.getValue(), closed, day, at)) {
                boolean waits = item.task() == Task.COUNT && !WorkingHours.isWorkday(day);
                boolean left = item.batch() != null
                        && batch(item).at(at.plusSeconds(SECONDS_AN_ITEM)).isEmpty();
                boolean skips = item.task() == Task.MOVE && !left && batch(item).stays();
                if (skips || !waits && !left && !TOLD_ELSEWHERE.contains(item.task())) {
                    at = at.plusSeconds(SECONDS_AN_ITEM);
                    done(site, item, at);
                }
            }
        }
    }

    private Map<String, List<BatchCare>> housesOf(Site site, Instant at) {
        return batches.stream()
                .filter(batch -> batch.fold().state().batch().site().equals(site.code()))
                .flatMap(batch -> batch.at(at).stream())
                .collect(Collectors.groupingBy(batch -> batch.state().house()));
    }

    /** @param closed by batch, or by house where the whole house was meant */
    private static List<RoundItem> open(
            Site site,
            String house,
            List<BatchCare> present,
            Map<String, List<Care>> closed,
            LocalDate day,
            Instant at) {
        List<Care> theirs = Stream.concat(
                        Stream.of(house),
                        present.stream().map(batch -> batch.state().batch().id()))
                .flatMap(name -> closed.getOrDefault(name, List.of()).stream())
                .toList();
        // As if the air were always dry: moisture is then looked at every day, and none is missed when it really was.
        HouseCare care = new HouseCare(house, present, theirs, List.of(), true, false);
        return Rounds.of(site, care, Rhythm.USUAL, day, at).stream()
                .filter(item -> item.state() == RoundItem.State.DUE || item.state() == RoundItem.State.CARRIED_OVER)
                .toList();
    }

    private void done(Site site, RoundItem item, Instant at) {
        SplittableRandom random = RoundFindings.drawnFor(item);
        String by = "%s grower %d".formatted(site.code(), 1 + random.nextInt(3));
        DemoCare.Found found = DemoCare.Found.NOTHING;
        switch (item.task()) {
            case ARRIVAL_CHECK -> found = RoundFindings.arrival(random);
            case EC_CHECK -> found = RoundFindings.salts(random);
            case SCOUTING -> found = RoundFindings.traps(random);
            case MOISTURE_CHECK -> {
                BatchCare seen = batch(item).at(at).orElseThrow();
                BatchState state = seen.state();
                found = RoundFindings.moisture(
                        seen.recipe()
                                .of(seen.recipe().phaseAt(state.batch().stuckAt(), state.reachedAt(), at))
                                .moistureLevel(),
                        random);
            }
            case COUNT -> {
                // as the books stand at this moment: trays may have left since the walk began
                BatchState state = batch(item).at(at).orElseThrow().state();
                DemoEntry count = RoundFindings.count(state, at, by, Diary.idOf("demo round " + item.id()), random);
                if (count == null) {
                    return;
                }
                counts.add(count);
                found = DemoCare.Found.counted(count.id());
            }
            default -> {}
        }
        String skippedFor = item.task() == Task.MOVE ? STAYS : null;
        String of = item.batch() == null ? item.house() : item.batch();
        String head = item.task().wireName() + "." + of;
        String occurrence = item.id().length() == head.length() ? "" : item.id().substring(head.length() + 1);
        cares.add(new DemoCare(
                item.task(),
                site.code(),
                item.house(),
                item.batch(),
                occurrence,
                item.dueOn(),
                at,
                by,
                skippedFor,
                found));
        closed.computeIfAbsent(of, name -> new ArrayList<>())
                .add(new Care(
                        item.id(),
                        item.task(),
                        item.house(),
                        item.batch(),
                        item.dueOn(),
                        skippedFor == null,
                        at,
                        found.level(),
                        found.ecMsPerCm()));
    }

    private Walker batch(RoundItem item) {
        return batches.stream()
                .filter(each -> each.fold().state().batch().id().equals(item.batch()))
                .findFirst()
                .orElseThrow();
    }

    private Walked withStories() {
        LeftUndone undone = new LeftUndone(setup, startAt, cares, this::standsIn);
        stories.forEach(undone::tell);
        List<DemoCare> kept = undone.told().stream()
                .filter(care -> care.task() != Task.MOISTURE_CHECK
                        || care.at().isAfter(startAt.minusSeconds(MOISTURE_DAYS * 86_400L)))
                .sorted(Comparator.comparing(DemoCare::at))
                .toList();
        return new Walked(kept, counts);
    }

    private boolean standsIn(String batch, String house) {
        return batches.stream()
                .filter(each -> each.fold().state().batch().id().equals(batch))
                .anyMatch(each -> each.at(startAt)
                        .filter(there -> there.state().house().equals(house))
                        .isPresent());
    }

    private static BatchFold foldOf(BatchStory.Told told) {
        DemoBatch demo = told.batch();
        Batch batch = new Batch(demo.key(), demo.site(), demo.variety(), demo.trayFormat(), demo.stuckAt());
        List<Entry> entries = new ArrayList<>();
        What stick = new What.Stick(demo.house(), demo.trays(), demo.plants());
        entries.add(new Entry(
                Diary.idOf(demo.key()),
                new FactPosition(1),
                demo.key(),
                demo.stuckAt(),
                demo.recordedAt(),
                demo.recordedBy(),
                stick,
                null));
        for (DemoEntry entry : told.entries()) {
            entries.add(new Entry(
                    entry.id(),
                    new FactPosition(entries.size() + 1),
                    demo.key(),
                    entry.happenedAt(),
                    entry.recordedAt(),
                    entry.recordedBy(),
                    entry.what(),
                    entry.note()));
        }
        return BatchFold.of(batch, entries);
    }
}
