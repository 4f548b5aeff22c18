package rootcast.crop;

/** What a recipe asks of a house. */
public enum RecipeQuantity {
    MEDIUM_TEMPERATURE("medium-temperature"),
    DAY_AIR_TEMPERATURE("day-air-temperature"),
    NIGHT_AIR_TEMPERATURE("night-air-temperature"),
    RELATIVE_HUMIDITY("relative-humidity"),
    VAPOUR_PRESSURE_DEFICIT("vapour-pressure-deficit"),
    LIGHT("light"),
    MEDIUM_MOISTURE("medium-moisture"),
    MIST("mist");

    private final String wireName;

    RecipeQuantity(String wireName) {
        this.wireName = wireName;
    }

    public String wireName() {
        return wireName;
    }
}
