package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Stands in for the sensors of the demo: simulated houses under recorded outdoor temperatures and an invented sky. It
 * moves only forward, to the instants it is given, and never reads a clock.
 *
 * <p>First {@link #hoursUntil} for the weeks before the demo began, then {@link #readAllAt} for every live reading.
 */
public final class Simulator {

    /** Weather is taken as unchanging for so long. */
    private static final Duration WEATHER_STEP = Duration.ofMinutes(10);

    private final DemoSetup setup;
    private final OutdoorWeather weather;
    private final SensorNoise noise;
    private final Map<String, CloudCover> clouds = new HashMap<>();
    private final Map<String, HouseModel> models = new LinkedHashMap<>();
    private final Map<String, HouseModel.State> states = new HashMap<>();
    private Instant standsAt;

    /**
     * @param startAt every house begins in balance with the weather of this instant
     * @param seed    same seed, same clouds and same errors of the probes
     */
    Simulator(DemoSetup setup, OutdoorWeather weather, long seed, Instant startAt) {
        this.setup = setup;
        this.weather = weather;
        noise = new SensorNoise(seed);
        standsAt = startAt;
        setup.sites().forEach(site -> clouds.put(site.code(), new CloudCover(seed, site.code())));
        for (DemoSetup.Building house : setup.houses()) {
            HouseModel model = house.model();
            models.put(house.code(), model);
            states.put(house.code(), model.settled(outdoors(setup.site(house.site()), startAt)));
        }
    }

    /** Moves every house on to {@code at} and reads all probes; {@code at} must not lie before the last instant. */
    public List<DemoReading> readAllAt(Instant at) {
        moveTo(at);
        List<DemoReading> readings = new ArrayList<>();
        for (DemoSetup.Building building : setup.houses()) {
            String house = building.code();
            HouseModel.State state = states.get(house);
            HouseModel.Outdoors outdoors = outdoors(setup.site(building.site()), at);
            readings.add(read(house, DemoReading.MEDIUM, state.mediumC(), at));
            readings.add(read(house, DemoReading.AIR, state.airC(), at));
            double humidity = models.get(house).humidityPercent(state, outdoors);
            readings.add(new DemoReading(house, DemoReading.HUMIDITY, noise.shownPercent(house, at, humidity), at));
            double light = HouseModel.photonFlux(outdoors);
            readings.add(new DemoReading(house, DemoReading.LIGHT, noise.shownPhotonFlux(house, at, light), at));
        }
        return readings;
    }

    /** What {@link #hoursUntil} saw. */
    public record Hours(List<DemoReading> readings, MediumHistory medium) {}

    /** Reads all probes at every full hour after where the simulator stands and before {@code untilExclusive}. */
    public Hours hoursUntil(Instant untilExclusive) {
        List<DemoReading> readings = new ArrayList<>();
        Map<String, List<Double>> mediumC = new LinkedHashMap<>();
        models.keySet().forEach(house -> mediumC.put(house, new ArrayList<>()));
        Instant first = standsAt.truncatedTo(ChronoUnit.HOURS).plus(1, ChronoUnit.HOURS);
        for (Instant at = first; at.isBefore(untilExclusive); at = at.plus(1, ChronoUnit.HOURS)) {
            readings.addAll(readAllAt(at));
            mediumC.forEach((house, values) -> values.add(states.get(house).mediumC()));
        }
        return new Hours(readings, new MediumHistory(first, mediumC));
    }

    private DemoReading read(String house, String quantity, double trueC, Instant at) {
        return new DemoReading(house, quantity, noise.shownC(house, quantity, at, trueC), at);
    }

    private void moveTo(Instant at) {
        if (at.isBefore(standsAt)) {
            throw new IllegalArgumentException(
                    "the simulated houses stand at %s and cannot go back to %s".formatted(standsAt, at));
        }
        while (standsAt.isBefore(at)) {
            Duration left = Duration.between(standsAt, at);
            Duration step = left.compareTo(WEATHER_STEP) < 0 ? left : WEATHER_STEP;
            for (DemoSetup.Place site : setup.sites()) {
                HouseModel.Outdoors outdoors = outdoors(site, standsAt);
                setup.houses().stream()
                        .filter(house -> house.site().equals(site.code()))
                        .forEach(house -> states.compute(
                                house.code(), (code, state) -> models.get(code).after(state, outdoors, step)));
            }
            standsAt = standsAt.plus(step);
        }
    }

    private HouseModel.Outdoors outdoors(DemoSetup.Place site, Instant at) {
        double sunWPerM2 =
                site.sun().clearSkyWPerM2(at) * clouds.get(site.code()).passedShare(at);
        return new HouseModel.Outdoors(weather.airC(at, site.timeZone()), sunWPerM2);
    }
}
