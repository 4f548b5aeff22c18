package rootcast.crop;

/** How mist runs, from most to least. */
public enum MistRegime {
    /** Day and night. */
    RUNNING,
    /** Longer pauses, still at night where the air asks for it. */
    WEANING,
    /** By day only. */
    NIGHT_OFF,
    NONE
}
