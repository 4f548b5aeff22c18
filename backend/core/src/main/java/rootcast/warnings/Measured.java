package rootcast.warnings;

/** What is watched of a house, by the name that readings go by, with its unit. */
public enum Measured {
    MEDIUM_C("medium-temperature", true),
    AIR_C("air-temperature", true),
    HUMIDITY_PERCENT("relative-humidity", true),
    LIGHT_UMOL("light", true),
    /** 1 dry to 5 free water. Often by hand, so hours without one say nothing of a probe. */
    MOISTURE_LEVEL("medium-moisture", false),
    /** Often by hand too. */
    EC_MS_PER_CM("ec", false);

    private final String wireName;
    private final boolean everyHour;

    Measured(String wireName, boolean everyHour) {
        this.wireName = wireName;
        this.everyHour = everyHour;
    }

    public String wireName() {
        return wireName;
    }

    boolean isExpectedEveryHour() {
        return everyHour;
    }
}
