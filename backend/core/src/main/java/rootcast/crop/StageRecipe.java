package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

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
        within("mediumC", mediumC, -10, 60);
        within("dayAirC", dayAirC, -40, 70);
        within("nightAirC", nightAirC, -40, 70);
        within("humidityPercent", humidityPercent, 0, 100);
        within("deficitKpa", deficitKpa, 0, 10);
        within("lightUmol", lightUmol, 0, 2_500);
        within("moistureLevel", moistureLevel, 1, 5);
        within("mediumEcMsPerCm", mediumEcMsPerCm, 0, 20);
        within("nitrogenPpm", nitrogenPpm, 0, 1_000);
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

    private static void within(String field, Band band, double least, double most) {
        boolean low = band.least() != Double.NEGATIVE_INFINITY && band.least() < least || band.least() > most;
        boolean high = band.most() != Double.POSITIVE_INFINITY && band.most() > most || band.most() < least;
        if (low || high) {
            throw new FaultyValue(
                    field + (low ? ".least" : ".most"), low ? band.least() : band.most(), Fault.BETWEEN, least, most);
        }
    }
}
