package rootcast.app.problem;

import java.util.Locale;

/** What can be looked for and not be there. */
public enum Thing {
    SITE,
    HOUSE,
    CROP,
    VARIETY,
    TRAY_FORMAT,
    PROFILE_VERSION,
    SENSOR,
    FLAG,
    BATCH,
    ORDER,
    TREATMENT,
    WARNING,
    ROUND_ITEM,
    CLOSED_ROUND_ITEM,
    PERSON,
    KEY,
    SESSION,
    DIRECTORY;

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    String words() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
