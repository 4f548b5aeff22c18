package rootcast.rounds;

/**
 * How often care comes round, in days. The values of {@link #USUAL} are common practice and have no source.
 *
 * @param lookAgain            from a look that found too few to the next
 * @param moistureUntilCallus  between moisture checks while cuttings have no roots
 * @param moistureLater        between moisture checks from callus on
 * @param scouting             between walks for pests
 * @param firstCount           from sticking to the first count
 * @param countAgain           from one count to the next
 * @param preventionWithin     from sticking to the day by which prevention is to be done
 * @param arrivalWithin        from sticking to the last day on which the box and the wetting agent are still asked for
 * @param draughtAgain         between looks for draught while cuttings are fresh
 * @param ecAgain              between measurements of the medium's salts once roots are there
 */
public record Rhythm(
        int lookAgain,
        int moistureUntilCallus,
        int moistureLater,
        int scouting,
        int firstCount,
        int countAgain,
        int preventionWithin,
        int arrivalWithin,
        int draughtAgain,
        int ecAgain) {

    public static final Rhythm USUAL = new Rhythm(2, 1, 2, 7, 7, 14, 7, 1, 2, 7);
}
