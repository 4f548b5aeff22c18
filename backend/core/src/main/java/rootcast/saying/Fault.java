package rootcast.saying;

import static rootcast.saying.ValueKind.CELSIUS;
import static rootcast.saying.ValueKind.COUNT;
import static rootcast.saying.ValueKind.DATE;
import static rootcast.saying.ValueKind.INSTANT;
import static rootcast.saying.ValueKind.MEASURE;
import static rootcast.saying.ValueKind.TEXT;
import static rootcast.saying.ValueKind.TEXTS;

/** What can be wrong with one field of a request. The sentences go on from the field's name. */
public enum Fault implements Sayable {
    MISSING("is missing"),
    NOT_WANTED("does not belong to this"),
    UNKNOWN_FIELD("is not a field here; known are {known}", "known", TEXTS),
    UNREADABLE("cannot be read"),
    ZERO_BYTE("holds a zero byte"),

    NOT_A_NUMBER("must be a number"),
    NOT_A_WHOLE_NUMBER("must be a whole number from {least} to {most}", "least", COUNT, "most", COUNT),
    NOT_A_DATE("must be a date such as 2026-03-02"),
    NOT_AN_INSTANT("must be an instant such as 2026-03-02T15:00:00Z"),
    NOT_A_WEEK("must be a week such as 2026-W48"),
    NOT_A_POSITION("must be a position from an earlier answer"),
    NOT_A_TIME_ZONE("must be a time zone such as America/Chicago"),
    NOT_A_TIME_FORMAT("must be a way of writing times such as yyyy-MM-dd HH:mm"),
    NOT_A_TABLE("cannot be read as a table"),
    NOT_A_TOPIC("must be one topic, without + or # or a leading $"),
    NOT_A_CODE("must be 1 to 32 letters, digits, '.', '_' or '-', and begin with a letter or digit"),
    NOT_A_NAME("must begin with a letter or digit and hold up to 64 letters, digits and the signs . _ @ -"),
    NOT_A_KEY("must be 1 to 200 visible ASCII characters; a UUID is best"),

    BETWEEN("must lie between {least} and {most}", "least", MEASURE, "most", MEASURE),
    BETWEEN_ENDS_EXCLUDED("must be over {least} and under {most}", "least", MEASURE, "most", MEASURE),
    OVER_AND_AT_MOST("must be over {over} and at most {most}", "over", MEASURE, "most", MEASURE),
    AT_LEAST("must be at least {least}", "least", MEASURE),
    AT_MOST("must be at most {most}", "most", MEASURE),
    NOT_RISING("must rise: {first} is above {second}", "first", MEASURE, "second", MEASURE),
    NO_VALUE_BETWEEN("must leave a value between its ends"),
    ONE_OF("must be one of {allowed}", "allowed", TEXTS),
    TOO_LONG("must be at most {most} characters long", "most", COUNT),
    TOO_SHORT("must be at least {least} characters long", "least", COUNT),
    TOO_MANY_BYTES("must be at most {most} bytes in UTF-8", "most", COUNT),
    TOO_MANY("must hold at most {most}", "most", COUNT),
    TOO_FEW("must hold at least {least}", "least", COUNT),
    TWICE("must not hold the same twice"),

    UNKNOWN_CODE("is '{asked}', which is not known", "asked", TEXT),
    TAKEN("is already in use"),
    TAKEN_BY("is in use by '{by}' already", "by", TEXT),
    FIXED("must stay '{before}'", "before", TEXT),
    OTHER_THAN("must be another than '{itself}'", "itself", TEXT),
    OTHER_SITE("stands on site '{site}', not '{wanted}'", "site", TEXT, "wanted", TEXT),

    IN_THE_FUTURE("is still to come; it is {now} here. Give a moment that has passed", "now", INSTANT),
    PAST("is past; what has been cannot be otherwise. Name today or later"),
    TOO_LONG_AGO("must lie at most {mostDays} days back", "mostDays", COUNT),
    NO_SPAN("must lie before its end"),
    TOO_LONG_A_SPAN("must lie before its end, by {mostDays} days at most", "mostDays", COUNT),
    DATES_BETWEEN("must lie between {first} and {last}", "first", DATE, "last", DATE),

    NO_PLANTS_LEFT("has no plant left"),
    NOT_THIS_SITES_HOUSES("must name houses of the site, each once: {houses}", "houses", TEXTS),
    NOTHING_ASKED("and moves are both empty: name a house to set or a batch to move"),
    PROMISES_OTHER_TRAYS(
            "promises {variety} in {trayFormat} from {site}, which this batch is not",
            "variety",
            TEXT,
            "trayFormat",
            TEXT,
            "site",
            TEXT),
    SAME_AS_DECIMAL_SIGN("must be another character than the decimal sign, quotes and line ends"),
    NOT_IN_HEADER("name '{column}', which is not in the header {header}", "column", TEXT, "header", TEXTS),
    NEEDS_SENSOR_OR_HOUSE("needs a sensor, or house, quantity and unit"),
    NO_SCALE_FOR_UNIT("belong to a moisture probe that shows %, kPa or mV; leave them out for {unit}", "unit", TEXT),
    NOT_FIVE_LEVELS(
            "must be the five numbers that the probe shows at moisture levels 1, 2, 3, 4 and 5, each higher or each lower than the one before"),
    HOUR_PURGED("lies in an hour whose readings were purged; its figure stays"),
    SAME_AS_NAME("must not be the name"),
    WRONG_PASSWORD("is not the password of this account"),
    RESERVED_NAME("stands for what nobody in person did; choose another"),
    ROLE_FOR_KEYS("is for keys; people are SALES, PRODUCTION, MANAGER or OWNER"),
    ROLE_FOR_PEOPLE("is for people; a key is DEVICE or PARTNER"),
    OWNER_OWNS_ALL("must be left out: an owner owns all sites"),
    EC_NEEDS_BOTH("is missing; EC needs the clear water's and the fertilizer's"),
    VOLUME_OR_AREA("or areaM2 with litresPerM2: one of the two is needed"),
    ONE_RATE_NEEDED(
            "with perVolume, or activePpm with activeMgPerMl, or activePpm with activePercent: one rate is needed"),

    CARDINALS_NOT_RISING(
            "must rise: minimum {minC} °C, optimum {optimumC} °C and maximum {maxC} °C",
            "minC",
            CELSIUS,
            "optimumC",
            CELSIUS,
            "maxC",
            CELSIUS),
    REFERENCE_OUTSIDE("must lie between minimum {minC} °C and maximum {maxC} °C", "minC", CELSIUS, "maxC", CELSIUS),
    HARDLY_ANY_GROWTH(
            "must be nearer to the optimum: at {referenceC} °C hardly anything develops", "referenceC", CELSIUS),
    NOT_THE_STAGES("must be the stages {stages} in this order", "stages", TEXTS),
    NOT_THE_PHASES("must be the phases {phases} in this order", "phases", TEXTS),
    SLOWEST_TAKES_TOO_LONG(
            "let the slowest variety at the slowest site take {days} days; at most {most}",
            "days",
            MEASURE,
            "most",
            MEASURE);

    private final Sentence sentence;

    Fault(String english, Object... namesAndKinds) {
        this.sentence = Sentence.of(english, namesAndKinds);
    }

    @Override
    public Sentence sentence() {
        return sentence;
    }
}
