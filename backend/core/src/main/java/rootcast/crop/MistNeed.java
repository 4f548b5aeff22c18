package rootcast.crop;

/** How much mist a crop's cuttings need after sticking; decides how long the full regime runs. */
public enum MistNeed {
    LIGHT(3),
    MEDIUM(4),
    HEAVY(5);

    private final int fullMistDays;

    MistNeed(int fullMistDays) {
        this.fullMistDays = fullMistDays;
    }

    /** Days from sticking with mist day and night: common practice, no source (about 3 light, about 5 heavy). */
    public int fullMistDays() {
        return fullMistDays;
    }
}
