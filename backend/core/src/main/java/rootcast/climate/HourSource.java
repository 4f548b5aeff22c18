package rootcast.climate;

/** Where the temperature of an hour comes from, the most trusted first. */
public enum HourSource {
    /** The mean of its own readings. */
    MEASURED,
    /** A straight line across at most three missing hours. */
    NEIGHBOURS,
    /** The same hour of the nearest day that has it. */
    SAME_HOUR,
    /** Still to come: the house's recent daily pattern. */
    PATTERN,
    /** Nothing near it was measured: the medium temperature the house is set to. */
    SETPOINT,
    /** Nothing near it was measured and the house has no set-point: the crop's reference temperature. */
    REFERENCE
}
