package rootcast.scenario;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.outlook.DevelopmentRate;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.WangEngel;

/** The houses of a {@link TrueBusiness}: their true warmth, what their probes say of it and what develops in them. */
final class TrueHouses {

    static final int HOUSES = 8;
    static final int STAGES = 3;

    private static final double[][] CARDINALS = {{6, 27, 37}, {9, 26.5, 36}, {4, 25.5, 37}};
    private static final int DRIFTING_EVERY = 4;
    private static final int DRIFT_DAYS = 60;
    private static final int DAYS_BETWEEN_SNAPS = 30;

    private final Random random;
    private final int hours;
    private final double[][] trueC;
    private final HourlySeries[] readings = new HourlySeries[HOUSES];

    /** By house and stage: development in reference-days up to each hour. */
    private final double[][][] developed = new double[HOUSES][STAGES][];

    /**
     * @param random what every business draws from
     * @param extra  what only some do, so that a switch leaves the other draws as they are
     */
    TrueHouses(Random random, Random extra, int hours, Truth truth) {
        this.random = random;
        this.hours = hours;
        trueC = new double[HOUSES][hours];
        double[] snapsC = truth.floor().coldSnaps() ? snaps(extra) : new double[hours];
        for (int house = 0; house < HOUSES; house++) {
            weather(house, snapsC);
            measure(house, house % DRIFTING_EVERY == 1 ? truth.floor().driftC() : 0);
            develop(house, truth.response());
        }
    }

    HouseCurves curves(Instant asOf) {
        var curves = new HouseCurves(asOf);
        for (int house = 0; house < HOUSES; house++) {
            curves.house("H" + house, readings[house], SetpointPlan.none());
        }
        return curves;
    }

    private double[] snaps(Random extra) {
        double[] snapsC = new double[hours];
        int hour = 0;
        while (hour < hours) {
            hour += (int) (-Math.log(1 - extra.nextDouble()) * DAYS_BETWEEN_SNAPS * 24);
            int until = Math.min(hours, hour + 48 + extra.nextInt(48));
            double fallC = 4 + 3 * extra.nextDouble();
            for (; hour < until; hour++) {
                snapsC[hour] = -fallC;
            }
        }
        return snapsC;
    }

    private void weather(int house, double[] snapsC) {
        double setpointC = 19.5 + 4.0 * house / (HOUSES - 1);
        double usualC = setpointC;
        double frontC = 0;
        double swingC = 0.5 + random.nextDouble();
        for (int hour = 0; hour < hours; hour++) {
            if (hour % (24 * 7) == 0) {
                setpointC += 0.35 * random.nextGaussian() + (usualC - setpointC) * 0.2;
            }
            frontC += -frontC / 96 + 0.09 * random.nextGaussian();
            trueC[house][hour] = setpointC + frontC + swingC * Math.sin((hour % 24 - 9) * Math.PI / 12) + snapsC[hour];
        }
    }

    private void measure(int house, double driftC) {
        readings[house] = new HourlySeries();
        double outC = 0.15 * random.nextGaussian();
        int silent = 0;
        for (int hour = 0; hour < hours; hour++) {
            if (silent > 0) {
                silent--;
            } else if (random.nextInt(700) == 0) {
                silent = random.nextInt(10) == 0 ? 24 + random.nextInt(96) : 1 + random.nextInt(24);
            }
            if (silent == 0) {
                double driftedC = driftC * (hour / 24 % DRIFT_DAYS) / DRIFT_DAYS;
                readings[house].add(
                        TrueBusiness.START.plus(Duration.ofHours(hour)),
                        trueC[house][hour] + outC + 0.3 * random.nextGaussian() + driftedC);
            }
        }
    }

    private void develop(int house, Truth.Response form) {
        for (int stage = 0; stage < STAGES; stage++) {
            DoubleUnaryOperator response = response(form, stage);
            double atReference = response.applyAsDouble(TrueBusiness.REFERENCE_C);
            double[] sum = new double[hours + 1];
            for (int hour = 0; hour < hours; hour++) {
                sum[hour + 1] = sum[hour] + response.applyAsDouble(trueC[house][hour]) / atReference / 24;
            }
            developed[house][stage] = sum;
        }
    }

    private static DoubleUnaryOperator response(Truth.Response form, int stage) {
        double[] cardinals = CARDINALS[stage];
        return switch (form) {
            case WANG_ENGEL -> new WangEngel(cardinals[0], cardinals[1], cardinals[2])::response;
            case BETA -> modelled(Cardinals.Form.BETA, cardinals)::response;
            case PLATEAU -> modelled(Cardinals.Form.LINEAR, cardinals)::response;
        };
    }

    private static DevelopmentRate modelled(Cardinals.Form form, double[] cardinals) {
        return new DevelopmentRate(
                new Cardinals(form, cardinals[0], cardinals[1], cardinals[2], TrueBusiness.REFERENCE_C));
    }

    private double developedBy(int house, int stage, double hour) {
        double[] sum = developed[house][stage];
        int i = (int) Math.min(hour, hours - 1);
        return sum[i] + (sum[i + 1] - sum[i]) * (hour - i);
    }

    /** A batch's stay: in one house, from an hour on in another. */
    record Stay(int house, double untilHour, int then) {}

    /** Hours since the start at which so many reference-days have been added since {@code fromHour}. */
    double hourOf(Stay stay, int stage, double fromHour, double referenceDays) {
        if (fromHour >= stay.untilHour) {
            return hourOf(stay.then, stage, fromHour, referenceDays);
        }
        double until = Math.min(stay.untilHour, hours);
        double given = developedBy(stay.house, stage, until) - developedBy(stay.house, stage, fromHour);
        return given >= referenceDays
                ? hourOf(stay.house, stage, fromHour, referenceDays)
                : hourOf(stay.then, stage, stay.untilHour, referenceDays - given);
    }

    private double hourOf(int house, int stage, double fromHour, double referenceDays) {
        double[] sum = developed[house][stage];
        double target = developedBy(house, stage, fromHour) + referenceDays;
        int i = Arrays.binarySearch(sum, target);
        int at = i >= 0 ? i : -i - 2;
        if (at >= hours) {
            throw new IllegalStateException("the weather ends before the batch is ready");
        }
        return at + (target - sum[at]) / (sum[at + 1] - sum[at]);
    }
}
