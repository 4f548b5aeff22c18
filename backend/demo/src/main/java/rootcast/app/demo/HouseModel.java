package rootcast.app.demo;

import java.time.Duration;

/**
 * A propagation house as two stores of heat per square metre of floor, its air and its growing medium. A simulation
 * that keeps the demo alive; no number of it reaches an outlook except through simulated readings.
 *
 * <p>Air: {@code airCapacity · dTa/dt = (cover + vents)·(To − Ta) + exchange·(Tm − Ta) + airHeat + sunToAir·S}.
 * <br>Medium: {@code mediumCapacity · dTm/dt = exchange·(Ta − Tm) + benchHeat + sunToMedium·S − evaporation}.
 * <br>Both heaters and the vents are proportional: nothing at the set-point, full {@code band} beyond it, never more
 * than full. A shade screen lets through {@link #SHADED_SHARE} of the sun above {@link #SHADE_ABOVE_W_PER_M2}; a second
 * one is drawn as far as it takes to keep {@link #MOST_SUN_W_PER_M2}, as houses for cuttings do from spring on.
 * Evaporation grows with the sun because mist and leaves follow it. Wind and the floor are left out; humidity follows from light and vents by a rule of thumb.
 *
 * <p>Source: the energy balance is the usual lumped one; every parameter value is a plausible choice for the demo
 * (common practice, no source).
 *
 * @param airCapacityJPerM2K    heat held by air, structure and crop; J·m⁻²·K⁻¹
 * @param mediumCapacityJPerM2K heat held by about 4 cm of wet medium; J·m⁻²·K⁻¹
 * @param coverWPerM2K          loss through the cover with the vents shut; W·m⁻²·K⁻¹
 * @param exchangeWPerM2K       between air and medium; W·m⁻²·K⁻¹
 * @param ventFullWPerM2K       added to the loss with the vents fully open; W·m⁻²·K⁻¹
 * @param airHeatFullWPerM2     air heater at full power; W·m⁻²
 * @param benchHeatFullWPerM2   bottom heat at full power; W·m⁻²
 * @param airSetpointC          below it the air heater works, °C
 * @param mediumSetpointC       below it the bottom heat works, °C
 * @param ventAboveC            above it the vents open, °C
 */
public record HouseModel(
        double airCapacityJPerM2K,
        double mediumCapacityJPerM2K,
        double coverWPerM2K,
        double exchangeWPerM2K,
        double ventFullWPerM2K,
        double airHeatFullWPerM2,
        double benchHeatFullWPerM2,
        double airSetpointC,
        double mediumSetpointC,
        double ventAboveC) {

    static final double SHADE_ABOVE_W_PER_M2 = 250;
    static final double SHADED_SHARE = 0.4;

    /**
     * 282 µmol/m²/s at the crop: a grower aims a twentieth below the 300 that unrooted cuttings are given, because a probe
     * errs by as much.
     */
    static final double MOST_SUN_W_PER_M2 = 310;

    /** Rooting at 22 °C, the air is then at the 20 °C that cuttings need at night. */
    private static final double AIR_BELOW_MEDIUM_C = 1.4;

    private static final double HEATER_BAND_C = 0.6;
    private static final double VENT_BAND_C = 4;
    private static final double SUN_TO_AIR_SHARE = 0.35;
    private static final double SUN_TO_MEDIUM_SHARE = 0.06;
    private static final double EVAPORATION_AT_NIGHT_W_PER_M2 = 8;
    private static final double SUN_TO_EVAPORATION_SHARE = 0.05;

    private static final double COVER_LIGHT_SHARE = 0.45;
    private static final double PHOTONS_PER_JOULE = 2.02;
    private static final double MISTED_PERCENT = 88.5;
    private static final double DRIER_BY_VENTS_PERCENT = 5;
    private static final double DRIER_BY_LIGHT_PERCENT = 0.012;

    /** The air settles within minutes when the vents are open; longer steps would overshoot. */
    private static final Duration LONGEST_STEP = Duration.ofSeconds(60);

    /** Without heat a house forgets where it began with a time constant of about 15 hours; this is sixteen of them. */
    static final Duration SETTLING = Duration.ofDays(10);

    /** What covers a house, and with it what heat it loses. */
    public enum Cover {
        DOUBLE_FILM(4.0),
        GLASS(6.5);

        private final double lossWPerM2K;

        Cover(double lossWPerM2K) {
            this.lossWPerM2K = lossWPerM2K;
        }
    }

    /** Temperatures of one moment, °C. */
    public record State(double airC, double mediumC) {}

    /**
     * Weather of one moment.
     *
     * @param airC         outdoor air, °C
     * @param sunWPerM2    global radiation on the level, W·m⁻²
     */
    public record Outdoors(double airC, double sunWPerM2) {}

    public HouseModel {
        if (!(airCapacityJPerM2K > 0 && mediumCapacityJPerM2K > 0 && coverWPerM2K > 0 && exchangeWPerM2K > 0)) {
            throw new IllegalArgumentException("capacities and conductances must be over 0");
        }
        if (!(ventAboveC > airSetpointC)) {
            throw new IllegalArgumentException(
                    "vents at %s °C would work against the heater at %s °C".formatted(ventAboveC, airSetpointC));
        }
    }

    /** A house with everything as usual: air heated to 1.4 degrees below the medium, vents five above that. */
    public static HouseModel of(Cover cover, double mediumSetpointC) {
        double airSetpointC = mediumSetpointC - AIR_BELOW_MEDIUM_C;
        return new HouseModel(
                25_000, 130_000, cover.lossWPerM2K, 9, 80, 220, 90, airSetpointC, mediumSetpointC, airSetpointC + 5);
    }

    /** Where the house settles if {@code outdoors} never changes. */
    public State settled(Outdoors outdoors) {
        return after(new State(airSetpointC, mediumSetpointC), outdoors, SETTLING);
    }

    /** The state {@code elapsed} later under unchanging weather. */
    public State after(State state, Outdoors outdoors, Duration elapsed) {
        double leftSeconds = elapsed.toMillis() / 1e3;
        State now = state;
        while (leftSeconds > 0) {
            double stepSeconds = Math.min(leftSeconds, LONGEST_STEP.toSeconds());
            now = step(now, outdoors, stepSeconds);
            leftSeconds -= stepSeconds;
        }
        return now;
    }

    private State step(State state, Outdoors outdoors, double stepSeconds) {
        double sunWPerM2 = underScreen(outdoors.sunWPerM2());
        double lossWPerM2K = coverWPerM2K + ventFullWPerM2K * opening(state.airC() - ventAboveC, VENT_BAND_C);
        double exchangedWPerM2 = exchangeWPerM2K * (state.mediumC() - state.airC());
        double airGainWPerM2 = lossWPerM2K * (outdoors.airC() - state.airC())
                + exchangedWPerM2
                + airHeatFullWPerM2 * opening(airSetpointC - state.airC(), HEATER_BAND_C)
                + SUN_TO_AIR_SHARE * sunWPerM2;
        double mediumGainWPerM2 = -exchangedWPerM2
                + benchHeatFullWPerM2 * opening(mediumSetpointC - state.mediumC(), HEATER_BAND_C)
                + (SUN_TO_MEDIUM_SHARE - SUN_TO_EVAPORATION_SHARE) * sunWPerM2
                - EVAPORATION_AT_NIGHT_W_PER_M2;
        return new State(
                state.airC() + airGainWPerM2 * stepSeconds / airCapacityJPerM2K,
                state.mediumC() + mediumGainWPerM2 * stepSeconds / mediumCapacityJPerM2K);
    }

    /**
     * Light at the crop, µmol/m²/s: what cover and screen let through, at 2.02 µmol to the joule of sunlight (Thimijan and
     * Heins 1983, from memory).
     */
    static double photonFlux(Outdoors outdoors) {
        return underScreen(outdoors.sunWPerM2()) * COVER_LIGHT_SHARE * PHOTONS_PER_JOULE;
    }

    /** Relative humidity under mist, percent: drier with sun and open vents; a plausible choice, no balance of water. */
    double humidityPercent(State state, Outdoors outdoors) {
        return MISTED_PERCENT
                - DRIER_BY_VENTS_PERCENT * opening(state.airC() - ventAboveC, VENT_BAND_C)
                - DRIER_BY_LIGHT_PERCENT * photonFlux(outdoors);
    }

    private static double underScreen(double sunWPerM2) {
        double excess = Math.max(0, sunWPerM2 - SHADE_ABOVE_W_PER_M2);
        return Math.min(sunWPerM2 - (1 - SHADED_SHARE) * excess, MOST_SUN_W_PER_M2);
    }

    /** Share of full power or full opening, 0 to 1. */
    private static double opening(double beyondC, double bandC) {
        return Math.min(1, Math.max(0, beyondC / bandC));
    }
}
