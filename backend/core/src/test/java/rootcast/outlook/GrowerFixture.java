package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.Cardinals.Form;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variation;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.BatchHistory.Plants;

/** A crop, a tray and batches for the tests of the outlook. Days 7, 9 and 10 at 22 °C: 26 in all. */
final class GrowerFixture {

    static final Instant STUCK = Instant.parse("2026-03-02T15:00:00Z");
    static final TrayFormat TRAY_105 = new TrayFormat("T105", 105, 100, 540, 280);

    static final Cardinals CALLUSING = new Cardinals(Form.BETA, 8, 27, 36, 22);
    static final Cardinals ROOTING = new Cardinals(Form.BETA, 10, 26, 35, 22);
    static final Cardinals TONING = new Cardinals(Form.LINEAR, 5, 24, 36, 22);

    static final CropProfile CROP = crop(0.1, 0.97, 0.96, 0.98, 150);

    static CropProfile crop(double rateSpread, double stick, double callus, double root, double weight) {
        return new CropProfile(
                        List.of(
                                new StageProfile(Stage.STICK, 7, CALLUSING, stick, weight),
                                new StageProfile(Stage.CALLUS, 9, ROOTING, callus, weight),
                                new StageProfile(Stage.ROOT, 10, TONING, root, weight)),
                        rateSpread,
                        8)
                .varying(Variation.USUAL.withDaysKnown().entering(0));
    }

    static BatchHistory batch(String house) {
        return batch(Map.of(), List.of(new Placement(house, STUCK)));
    }

    static BatchHistory batch(Map<Stage, Instant> reachedAt, List<Placement> placements) {
        return new BatchHistory(STUCK, reachedAt, placements, new Plants(STUCK, 1_050), List.of(), List.of(), null);
    }

    static HourlySeries constant(double celsius, Instant from, Instant until) {
        var series = new HourlySeries();
        for (Instant at = from; at.isBefore(until); at = at.plus(Duration.ofMinutes(20))) {
            series.add(at, celsius);
        }
        return series;
    }

    static HouseCurves houses(Instant asOf, String code, HourlySeries series) {
        var houses = new HouseCurves(asOf);
        houses.house(code, series, SetpointPlan.none());
        return houses;
    }

    static Instant days(double days) {
        return STUCK.plusMillis(Math.round(days * 86_400_000));
    }

    static double daysAfterSticking(Instant at) {
        return Duration.between(STUCK, at).toMillis() / 86_400_000.0;
    }

    private GrowerFixture() {}
}
