package rootcast.climate;

import static rootcast.saying.ValueKind.COUNT;
import static rootcast.saying.ValueKind.INSTANT;
import static rootcast.saying.ValueKind.MEASURE;
import static rootcast.saying.ValueKind.TEXT;
import static rootcast.saying.ValueKind.THING;

import rootcast.saying.Sayable;
import rootcast.saying.Sentence;

/**
 * What is said of one reading, or of a line or cell of a table of readings. Measures are in the unit of the quantity that
 * comes with them.
 */
public enum ReadingRemark implements Sayable {
    RANGE(
            "{value} cannot be: the limit is {expected}; kept, left out",
            "value",
            MEASURE,
            "expected",
            MEASURE,
            "quantity",
            THING),
    SPIKE(
            "{value} is more than {limit} from {expected}, the middle of the readings around it",
            "value",
            MEASURE,
            "expected",
            MEASURE,
            "limit",
            MEASURE,
            "quantity",
            THING),
    STEP(
            "{value} after {expected} is a change of more than {limit} from one reading to the next",
            "value",
            MEASURE,
            "expected",
            MEASURE,
            "limit",
            MEASURE,
            "quantity",
            THING),
    FLAT_LINE("{value} and nothing else for {hours} hours", "value", MEASURE, "hours", COUNT, "quantity", THING),
    DISAGREEMENT(
            "the hour's {value} is more than {limit} from {expected} by the other sensors",
            "value",
            MEASURE,
            "expected",
            MEASURE,
            "limit",
            MEASURE,
            "quantity",
            THING),
    DUPLICATE(
            "{value} came after {expected} for the same moment; the first stays",
            "value",
            MEASURE,
            "expected",
            MEASURE,
            "quantity",
            THING),
    CLOCK_SKEW(
            "{value} was stamped with a time that was still to come; kept, left out",
            "value",
            MEASURE,
            "quantity",
            THING),
    MORE_THAN_THE_SUN(
            "{value} mol/m²/d is more than the {most} that fall outdoors: a fault of the sensor",
            "value",
            MEASURE,
            "most",
            MEASURE,
            "quantity",
            THING),
    LATE("came more than six hours after it was measured; used"),

    IMPLAUSIBLE(
            "{value} must lie between {least} and {most}",
            "value",
            MEASURE,
            "least",
            MEASURE,
            "most",
            MEASURE,
            "quantity",
            THING),
    NOT_A_NUMBER("'{text}' is no number", "text", TEXT),
    INCOMPLETE("house, quantity, value, unit and at are all needed"),
    UNREADABLE("is not a reading"),
    UNKNOWN_HOUSE("there is no house '{text}'", "text", TEXT),
    UNKNOWN_QUANTITY("'{text}' is not measured", "text", TEXT),
    OTHER_UNIT("does not come in '{text}'", "text", TEXT),
    UNKNOWN_SENSOR("there is no sensor '{text}' that shows this", "text", TEXT),
    TOO_LONG_A_MESSAGE("holds {characters} characters; a reading needs few", "characters", COUNT),
    NEITHER_NUMBER_NOR_OBJECT("is neither a number nor {\"value\":…, \"at\":…}"),
    NO_NUMBER_AS_VALUE("has no number as its \"value\""),
    BROKEN_JSON("is broken JSON"),
    NO_TIME_AS_AT("has no time such as \"2026-03-01T08:00:00Z\" as its \"at\""),
    KEPT_WITHOUT_TIME("was kept by the broker and does not say when it was measured"),
    NO_SENSOR_OF_TOPIC("no sensor has this topic"),
    NOT_STORED("could not be stored; the log says why"),
    TOO_OLD("{at} is over 5 years ago", "at", INSTANT),
    PURGED("the readings of {at} were purged; their hours stay", "at", INSTANT),
    OTHER_CELLS("has {cells} cells, the header has another number", "cells", COUNT),
    NOT_A_TIME("'{text}' is no time of the form that was given", "text", TEXT),
    NO_OFFSET("'{text}' does not state its offset, and no clock was named", "text", TEXT),
    IMPOSSIBLE_OFFSET("{text} states {offset}: no clock is more than 14:00 from UTC", "text", TEXT, "offset", TEXT),
    OFFSET_OF_ELSEWHERE(
            "{text} states {offset}, which clocks of {zone} show in no season: the offset or the hour is wrong",
            "text",
            TEXT,
            "offset",
            TEXT,
            "zone",
            TEXT),
    OFFSET_OF_ANOTHER_SEASON(
            "{text} states {offset} where clocks of {zone} show {shown}: taken as it states",
            "text",
            TEXT,
            "offset",
            TEXT,
            "shown",
            TEXT,
            "zone",
            TEXT),
    SEVERAL_HOUSES("'{text}' is the name of several houses: their codes tell them apart", "text", TEXT),
    NO_SUCH_LOCAL_TIME("{text} does not exist in {zone}: clocks went forward over it", "text", TEXT, "zone", TEXT),
    FIRST_OF_TWO("{text} came twice in {zone}: taken as the first", "text", TEXT, "zone", TEXT),
    SECOND_OF_TWO("{text} came twice in {zone}: taken as the second", "text", TEXT, "zone", TEXT);

    private final Sentence sentence;

    ReadingRemark(String english, Object... namesAndKinds) {
        this.sentence = Sentence.of(english, namesAndKinds);
    }

    @Override
    public Sentence sentence() {
        return sentence;
    }
}
