package rootcast.crop;

/**
 * A part of a stage that asks for one climate.
 *
 * <p>Source: stages after Faust, Dole and Lopez, Horticultural Reviews 44 (2017) 121-172 (arrival and sticking, callusing,
 * root development, toning); the first days of sticking are set apart because cuttings without roots dry down in them.
 */
public enum Phase {
    /** The first days: mist day and night. */
    STICKING(Stage.STICK),
    /** From then on until callus. */
    CALLUSING(Stage.STICK),
    /** Callused, roots on their way. */
    ROOTING(Stage.CALLUS),
    /** Rooted, roots fill the cell. */
    FILLING(Stage.ROOT),
    /** Hardening off until the liner leaves. */
    TONING(Stage.ROOT);

    private final Stage stage;

    Phase(Stage stage) {
        this.stage = stage;
    }

    public Stage stage() {
        return stage;
    }
}
