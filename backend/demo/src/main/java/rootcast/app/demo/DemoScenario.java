package rootcast.app.demo;

import java.io.IOException;
import java.io.Reader;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rootcast.app.crop.CropSeed;
import rootcast.app.crop.RecipeSeed;
import rootcast.app.crop.SeedFiles;
import rootcast.crop.CropProfile;
import rootcast.crop.CropRecipe;
import rootcast.ledger.OrderLine;

/**
 * The demo's invented business, read from the seed folder and told relative to the instant the demo starts. The same
 * start and seed always tell the same.
 */
public final class DemoScenario {

    /** Drawn once; another seed tells another ten weeks. */
    public static final long SEED = 20_260_301;

    /** The oldest batch was stuck on the Friday before 70 days ago at the latest. */
    static final Duration READINGS_BACK = Duration.ofDays(75);

    private final DemoSetup setup;
    private final List<CropSeed> crops;
    private final Map<String, CropRecipe> recipes;
    private final List<BatchPlan> plans;
    private final List<OrderPlan> orderPlans;
    private final List<RoundStory> roundStories;
    private final OutdoorWeather weather;

    private DemoScenario(
            DemoSetup setup,
            List<CropSeed> crops,
            Map<String, CropRecipe> recipes,
            List<BatchPlan> plans,
            List<OrderPlan> orderPlans,
            List<RoundStory> roundStories,
            OutdoorWeather weather) {
        this.setup = setup;
        this.crops = crops;
        this.recipes = recipes;
        this.plans = plans;
        this.orderPlans = orderPlans;
        this.roundStories = roundStories;
        this.weather = weather;
    }

    /**
     * Everything the demo tells.
     *
     * @param batches   in the order they were stuck
     * @param entries   in the order they were recorded
     * @param orders    in the order they were taken
     * @param cares     what was done on the rounds, as it happened
     * @param readings  hourly, oldest first
     * @param simulator stands at the last of those hours
     */
    public record Told(
            List<DemoBatch> batches,
            List<DemoEntry> entries,
            List<DemoOrder> orders,
            List<DemoCare> cares,
            List<DemoReading> readings,
            Simulator simulator) {}

    /** From the seed folder packed with the application. */
    public static DemoScenario packed() throws IOException {
        return read(SeedFiles.onClassPath());
    }

    static DemoScenario read(SeedFiles files) throws IOException {
        DemoSetup setup = files.json("demo/setup.json", DemoSetup.class);
        List<CropSeed> crops = new ArrayList<>();
        for (String code : setup.crops()) {
            crops.add(files.json("profiles/" + code + ".json", CropSeed.class));
        }
        Map<String, CropRecipe> recipes = new HashMap<>();
        RecipeSeed.all(files).forEach((crop, seed) -> recipes.put(crop, seed.recipe()));
        List<BatchPlan> plans = files.table("demo/batches.csv").rows().stream()
                .map(BatchPlan::of)
                .toList();
        List<OrderPlan> orderPlans =
                OrderPlan.all(files.table("demo/orders.csv").rows());
        List<RoundStory> roundStories =
                RoundStory.all(files.table("demo/rounds.csv").rows());
        try (Reader csv = files.text("demo/weather/hourly-normals.csv")) {
            return new DemoScenario(setup, crops, recipes, plans, orderPlans, roundStories, OutdoorWeather.read(csv));
        }
    }

    DemoSetup setup() {
        return setup;
    }

    List<CropSeed> crops() {
        return crops;
    }

    /** By crop. */
    Map<String, CropRecipe> recipes() {
        return recipes;
    }

    List<RoundStory> roundStories() {
        return roundStories;
    }

    /** Ten weeks of the business, ending at {@code start}. */
    public Told tell(Instant start) {
        Simulator simulator = simulatorFrom(start.minus(READINGS_BACK));
        Simulator.Hours hours = simulator.hoursUntil(start);
        List<DemoOrder> orders = orderPlans.stream()
                .map(plan -> plan.order(setup, start))
                .sorted(Comparator.comparing(DemoOrder::recordedAt))
                .toList();
        Map<String, List<BatchStory.PlannedShipment>> shipments = shipments(start);
        List<BatchStory.Told> stories = plans.stream()
                .map(plan -> story(plan, hours.medium(), shipments.getOrDefault(plan.key(), List.of()), start)
                        .tell())
                .toList();
        DemoRounds.Walked walked = DemoRounds.walked(setup, roundStories, recipes, stories, staying(), start);
        return new Told(
                stories.stream()
                        .map(BatchStory.Told::batch)
                        .sorted(Comparator.comparing(DemoBatch::recordedAt))
                        .toList(),
                Stream.concat(stories.stream().flatMap(story -> story.entries().stream()), walked.counts().stream())
                        .sorted(Comparator.comparing(DemoEntry::recordedAt))
                        .toList(),
                orders,
                walked.cares(),
                audible(hours.readings(), start),
                simulator);
    }

    /**
     * A simulator for a demo that was started before: its houses are in step with the weather from {@code lastReadingAt}
     * on, as if they had never stopped.
     */
    public Simulator resumedAt(Instant lastReadingAt) {
        Simulator simulator = simulatorFrom(lastReadingAt.minus(HouseModel.SETTLING));
        simulator.readAllAt(lastReadingAt);
        return simulator;
    }

    private Simulator simulatorFrom(Instant at) {
        return new Simulator(setup, weather, SEED, at.truncatedTo(ChronoUnit.HOURS));
    }

    private List<DemoReading> audible(List<DemoReading> readings, Instant start) {
        return readings.stream()
                .filter(reading -> setup.outages().stream().noneMatch(outage -> outage.silences(reading, start)))
                .toList();
    }

    private BatchStory story(
            BatchPlan plan, MediumHistory medium, List<BatchStory.PlannedShipment> shipments, Instant start) {
        DemoSetup.Place site = setup.site(setup.house(plan.house()).site());
        return new BatchStory(
                plan,
                site,
                setup.trayFormat(plan.trayFormat()),
                profileOf(plan.variety()),
                medium,
                shipments,
                SeededDraw.of(SEED, plan.key(), 0),
                start);
    }

    private CropProfile profileOf(String variety) {
        String crop = setup.variety(variety).crop();
        return crops.stream()
                .filter(seed -> seed.code().equals(crop))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no profile of crop " + crop + " in the seed"))
                .crop()
                .profile();
    }

    /** Keys of batches that their growers keep where they were stuck. */
    Set<String> staying() {
        return plans.stream()
                .filter(plan -> plan.toningHouse().isEmpty())
                .map(BatchPlan::key)
                .collect(Collectors.toUnmodifiableSet());
    }

    /** Shipments that order lines of the past name, by batch. */
    private Map<String, List<BatchStory.PlannedShipment>> shipments(Instant start) {
        Map<String, List<BatchStory.PlannedShipment>> byBatch = new LinkedHashMap<>();
        for (OrderPlan plan : orderPlans) {
            for (int line = 1; line <= plan.lines().size(); line++) {
                OrderPlan.LinePlan wanted = plan.lines().get(line - 1);
                if (!wanted.shippedFrom().isEmpty()) {
                    LocalDate on = wanted.shipOn(setup, start);
                    byBatch.computeIfAbsent(wanted.shippedFrom(), key -> new ArrayList<>())
                            .add(new BatchStory.PlannedShipment(on, wanted.trays(), new OrderLine(plan.id(), line)));
                }
            }
        }
        byBatch.values().forEach(list -> list.sort(Comparator.comparing(BatchStory.PlannedShipment::on)));
        return byBatch;
    }
}
