package rootcast.crop;

/**
 * The climate and care that a crop is to have in one phase.
 *
 * <p>Moisture levels: 1 dry, 2 light brown and crumbling, 3 a few drops when squeezed hard, 4 drips when pressed, 5 free
 * water on top (common practice, no source).
 *
 * @param mediumC         medium at the stem base, °C
 * @param dayAirC         air by day, °C
 * @param nightAirC       air by night, °C
 * @param humidityPercent relative humidity of the air, %
 * @param deficitKpa      vapour pressure deficit of the air, kPa
 * @param lightUmol       photosynthetic photon flux by day, µmol·m⁻²·s⁻¹; its lower end says what noon should give
 * @param moistureLevel   of the medium, 1 to 5
 * @param mediumEcMsPerCm salts of the medium, mS/cm, by the method that the nursery measures with
 * @param nitrogenPpm     nitrogen in the water that the plants get, ppm (mg/L)
 */
public record StageRecipe(
        Phase phase,
        Band mediumC,
        Band dayAirC,
        Band nightAirC,
        Band humidityPercent,
        Band deficitKpa,
        Band lightUmol,
        Band moistureLevel,
        MistRegime mist,
        Band mediumEcMsPerCm,
        Band nitrogenPpm) {

    public StageRecipe {
        within("medium", mediumC, -10, 60, "°C");
        within("day air", dayAirC, -40, 70, "°C");
        within("night air", nightAirC, -40, 70, "°C");
        within("humidity", humidityPercent, 0, 100, "%");
        within("vapour pressure deficit", deficitKpa, 0, 10, "kPa");
        within("light", lightUmol, 0, 2_500, "µmol/m²/s");
        within("moisture", moistureLevel, 1, 5, "of 5");
        within("EC of the medium", mediumEcMsPerCm, 0, 20, "mS/cm");
        within("nitrogen", nitrogenPpm, 0, 1_000, "ppm");
    }

    /** The span a house must keep to suit this recipe. A regime of mist suits its neighbours too, as the ends touch. */
    public Band band(RecipeQuantity quantity) {
        return switch (quantity) {
            case MEDIUM_TEMPERATURE -> mediumC;
            case DAY_AIR_TEMPERATURE -> dayAirC;
            case NIGHT_AIR_TEMPERATURE -> nightAirC;
            case RELATIVE_HUMIDITY -> humidityPercent;
            case VAPOUR_PRESSURE_DEFICIT -> deficitKpa;
            case LIGHT -> lightUmol;
            case MEDIUM_MOISTURE -> moistureLevel;
            case MIST -> new Band(mist.ordinal() - 0.5, mist.ordinal() + 0.5);
        };
    }

    StageRecipe withMedium(Band otherMediumC) {
        return new StageRecipe(
                phase,
                otherMediumC,
                dayAirC,
                nightAirC,
                humidityPercent,
                deficitKpa,
                lightUmol,
                moistureLevel,
                mist,
                mediumEcMsPerCm,
                nitrogenPpm);
    }

    private static void within(String what, Band band, double least, double most, String unit) {
        boolean low = band.least() != Double.NEGATIVE_INFINITY && band.least() < least || band.least() > most;
        boolean high = band.most() != Double.POSITIVE_INFINITY && band.most() > most || band.most() < least;
        if (low || high) {
            throw new IllegalArgumentException("%s %s to %s must lie between %s and %s %s"
                    .formatted(what, band.least(), band.most(), least, most, unit));
        }
    }
}
