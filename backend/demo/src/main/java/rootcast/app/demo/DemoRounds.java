package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rootcast.crop.CropRecipe;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.Task;

/**
 * The rounds that people of the demo walked before it starts: what each batch and house needed, done at eight in the
 * morning, but for what fell due on the last day and for a few things that were forgotten, so that there is something to see.
 */
final class DemoRounds {

    private static final int MORNING_HOUR = 8;

    /** Every so many batches something was forgotten, and every so many houses nobody scouted. */
    private static final int FORGOTTEN_BATCH = 11;

    private static final int FORGOTTEN_HOUSE = 5;

    private final DemoSetup setup;
    private final Map<String, CropRecipe> recipes;
    private final Instant startAt;
    private final List<DemoCare> cares = new ArrayList<>();

    private DemoRounds(DemoSetup setup, Map<String, CropRecipe> recipes, Instant startAt) {
        this.setup = setup;
        this.recipes = recipes;
        this.startAt = startAt;
    }

    /** @param recipes by crop */
    static List<DemoCare> walked(DemoScenario scenario, DemoScenario.Told told, Map<String, CropRecipe> recipes) {
        Instant startAt = told.readings().get(told.readings().size() - 1).at();
        DemoRounds rounds = new DemoRounds(scenario.setup(), recipes, startAt);
        Map<String, List<DemoEntry>> entries = told.entries().stream().collect(Collectors.groupingBy(DemoEntry::batch));
        Map<String, Instant> firstIn = new TreeMap<>();
        int number = 0;
        for (DemoBatch batch : told.batches()) {
            rounds.batch(batch, entries.getOrDefault(batch.key(), List.of()), ++number % FORGOTTEN_BATCH == 0);
            firstIn.merge(batch.house(), batch.stuckAt(), (a, b) -> a.isBefore(b) ? a : b);
        }
        number = 0;
        for (Map.Entry<String, Instant> house : firstIn.entrySet()) {
            rounds.house(house.getKey(), house.getValue(), ++number % FORGOTTEN_HOUSE == 0);
        }
        rounds.cares.sort(Comparator.comparing(DemoCare::at));
        return rounds.cares;
    }

    private void batch(DemoBatch batch, List<DemoEntry> entries, boolean forgotten) {
        Map<Stage, Instant> reached = reached(entries);
        CropRecipe recipe = recipes.get(cropOf(batch));
        Instant weaned = batch.stuckAt().plus(Duration.ofDays(recipe.fullMistDays()));
        Instant callused = reached.get(Stage.CALLUS);
        Instant rooted = reached.get(Stage.ROOT);
        once(Task.PREVENTION, batch, entries, "", batch.stuckAt().plus(Duration.ofDays(1)));
        if (callused == null || callused.isAfter(weaned)) {
            once(Task.WEAN_MIST, batch, entries, "", weaned);
        }
        if (callused != null && !forgotten) {
            once(Task.NIGHT_MIST_OFF, batch, entries, "", callused);
            once(Task.FEED_STEP, batch, entries, "rooting", callused);
        }
        if (rooted != null && !forgotten) {
            once(Task.MIST_OFF, batch, entries, "", rooted);
            once(Task.FEED_STEP, batch, entries, "filling", rooted);
            once(Task.TONE, batch, entries, "", rooted.plus(Duration.ofDays(recipe.toneAfterDays())));
        }
        moisture(batch, entries, callused);
    }

    /** Only the last check: older ones would tell nothing more. */
    private void moisture(DemoBatch batch, List<DemoEntry> entries, Instant callused) {
        LocalDate yesterday = dayOf(batch, startAt).minusDays(1);
        if (dayOf(batch, batch.stuckAt()).isBefore(yesterday)) {
            int level = callused == null || callused.isAfter(startAt) ? 4 : 3;
            add(Task.MOISTURE_CHECK, batch, entries, yesterday.toString(), yesterday, level);
        }
    }

    /** On the morning after it fell due. */
    private void once(Task task, DemoBatch batch, List<DemoEntry> entries, String occurrence, Instant dueAt) {
        add(task, batch, entries, occurrence, dayOf(batch, dueAt), null);
    }

    private void add(
            Task task, DemoBatch batch, List<DemoEntry> entries, String occurrence, LocalDate dueOn, Integer level) {
        Instant morning = dueOn.plusDays(task == Task.MOISTURE_CHECK ? 0 : 1)
                .atTime(MORNING_HOUR, 0)
                .atZone(zone(batch.site()))
                .toInstant();
        if (morning.isBefore(startAt)) {
            String house = houseAt(batch, entries, morning);
            cares.add(new DemoCare(task, batch.site(), house, batch.key(), occurrence, dueOn, morning, level));
        }
    }

    private void house(String house, Instant firstIn, boolean forgotten) {
        String site = setup.house(house).site();
        LocalDate due = LocalDate.ofInstant(firstIn, zone(site)).plusDays(1);
        Instant walked = due.atTime(MORNING_HOUR, 0).atZone(zone(site)).toInstant();
        Instant until = forgotten ? startAt.minus(Duration.ofDays(10)) : startAt;
        while (walked.isBefore(until)) {
            cares.add(new DemoCare(Task.SCOUTING, site, house, null, due.toString(), due, walked, null));
            due = due.plusDays(7);
            walked = due.atTime(MORNING_HOUR, 0).atZone(zone(site)).toInstant();
        }
    }

    private static Map<Stage, Instant> reached(List<DemoEntry> entries) {
        Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
        for (DemoEntry entry : entries) {
            if (entry.what() instanceof What.StageReached stage) {
                reached.put(stage.stage(), entry.happenedAt());
            }
        }
        return reached;
    }

    private static String houseAt(DemoBatch batch, List<DemoEntry> entries, Instant at) {
        return entries.stream()
                .filter(entry ->
                        entry.what() instanceof What.Move && !entry.happenedAt().isAfter(at))
                .max(Comparator.comparing(DemoEntry::happenedAt))
                .map(entry -> ((What.Move) entry.what()).house())
                .orElse(batch.house());
    }

    private String cropOf(DemoBatch batch) {
        return setup.variety(batch.variety()).crop();
    }

    private LocalDate dayOf(DemoBatch batch, Instant at) {
        return LocalDate.ofInstant(at, zone(batch.site()));
    }

    private ZoneId zone(String site) {
        return setup.site(site).timeZone();
    }
}
