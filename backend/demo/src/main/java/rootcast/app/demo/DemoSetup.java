package rootcast.app.demo;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.outlook.UsualMove;
import rootcast.rounds.MoveOn;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * The invented business as seed/demo/setup.json writes it.
 *
 * @param outages hours in which a probe is silent, so that the demo shows how missing hours are reported
 * @param crops   codes; each has a profile in seed/profiles
 */
record DemoSetup(
        String business,
        List<Place> sites,
        List<Building> houses,
        List<Outage> outages,
        List<TrayFormat> trayFormats,
        List<String> crops,
        List<Variety> varieties) {

    /**
     * A site with where the sun stands over it.
     *
     * @param latitudeDeg  north is positive
     * @param longitudeDeg east is positive
     */
    record Place(
            String code, String name, ZoneId timeZone, DayOfWeek shipDay, double latitudeDeg, double longitudeDeg) {
        Site site() {
            return new Site(code, name, timeZone, shipDay);
        }

        Sun sun() {
            return new Sun(latitudeDeg, longitudeDeg);
        }
    }

    /**
     * A house with what it is built of.
     *
     * @param toningHouse where its batches usually go on to once rooted; null if they stay
     */
    record Building(
            String code,
            String site,
            String name,
            double mediumSetpointC,
            HouseModel.Cover cover,
            @Nullable String toningHouse) {
        House house() {
            return new House(code, site, name, mediumSetpointC);
        }

        /** Where its batches go on to, stated when the demo's readings begin; empty if they stay. */
        Optional<MoveOn> next(Instant startAt) {
            return Optional.ofNullable(toningHouse)
                    .map(to -> new MoveOn(new UsualMove(Stage.ROOT, to), startAt.minus(DemoScenario.READINGS_BACK)));
        }

        HouseModel model() {
            return HouseModel.of(cover, mediumSetpointC);
        }
    }

    /** @param endedHoursAgo before the demo's start instant */
    record Outage(String house, String quantity, int endedHoursAgo, int hours) {
        boolean silences(DemoReading reading, Instant demoStart) {
            Instant untilExclusive = demoStart.minusSeconds(endedHoursAgo * 3600L);
            return house.equals(reading.house())
                    && quantity.equals(reading.quantity())
                    && reading.at().isBefore(untilExclusive)
                    && !reading.at().isBefore(untilExclusive.minusSeconds(hours * 3600L));
        }
    }

    Place site(String code) {
        return sites.stream()
                .filter(site -> site.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no site " + code + " in the demo's setup"));
    }

    Building house(String code) {
        return houses.stream()
                .filter(house -> house.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no house " + code + " in the demo's setup"));
    }

    TrayFormat trayFormat(String code) {
        return trayFormats.stream()
                .filter(format -> format.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no tray format " + code + " in the demo's setup"));
    }

    Variety variety(String code) {
        return varieties.stream()
                .filter(variety -> variety.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("no variety " + code + " in the demo's setup"));
    }
}
