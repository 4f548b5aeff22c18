package rootcast.climate;

/** Where the temperature of an hour comes from, the most trusted first. */
public enum HourSource {
    /** The mean of its own readings. */
    MEASURED,
    /** A straight line across at most three missing hours. */
    NEIGHBOURS,
    /** The same hour of the nearest day that has it. */
    SAME_HOUR,
    /** Nothing near it was measured: the house's set-point, or without one the profile's reference temperature. */
    FALLBACK,
    /** Still to come: the house's recent daily pattern. */
    FORECAST
}
