package rootcast.crop;

import java.util.List;

/**
 * The recipe that a crop has until somebody edits it.
 *
 * <p>Every value is common practice of the trade and has no source, but for the deficit of the first days. Medium 20 to
 * 23.3 °C, never below 20, nor 21 where light is low; air not below 20 °C at night, 20 to 26.7 by day; humidity 80 to
 * 90 %, since more brings breakdown and Botrytis; light 1 300 to 1 500 foot-candles; moisture 4 until roots begin, 3 to 4
 * while rooting, never 5; nitrogen nil or 50 ppm to callus, 75 to 100 once callused, 75 to 150 while rooting; salts of the medium
 * not below 0.75 mS/cm in its saturated extract once roots are there, since mist leaches them.
 *
 * <p>Source: deficit of the first days, 0.3 to 0.4 kPa at 85 % and above, quoted in extension literature (a second
 * source); its upper end here is what 80 % leaves at 22 °C by FAO-56 eq. 11. Foot-candles: sun, 54 lux to 1 µmol, Thimijan
 * and Heins, HortScience 18 (1983) 818-822.
 */
public final class CommonPractice {

    /** What every value of {@link #recipe} rests on, in the words of the seed files. */
    public static final String MARK = "common practice, no source";

    private static final Band PROPAGATION_MEDIUM_C = new Band(20, 23.3);
    private static final Band PROPAGATION_DAY_C = new Band(20, 26.7);
    private static final Band PROPAGATION_NIGHT_C = new Band(20, 26.7);

    /** 1 300 and 1 500 foot-candles. */
    private static final Band LIGHT_UMOL = new Band(260, 300);

    private static final Band UNFED_EC = Band.atMost(1.5);
    private static final Band FED_EC = new Band(0.75, 2);

    private static final int TONE_AFTER_DAYS = 7;
    private static final double LOW_LIGHT_MOL = 5;
    private static final double LOW_LIGHT_MEDIUM_C = 21;

    private CommonPractice() {}

    public static CropRecipe recipe(MistNeed need) {
        return new CropRecipe(
                need,
                need.fullMistDays(),
                TONE_AFTER_DAYS,
                LOW_LIGHT_MOL,
                LOW_LIGHT_MEDIUM_C,
                List.of(sticking(), callusing(), rooting(), filling(), toning()));
    }

    private static StageRecipe sticking() {
        return new StageRecipe(
                Phase.STICKING,
                PROPAGATION_MEDIUM_C,
                PROPAGATION_DAY_C,
                PROPAGATION_NIGHT_C,
                new Band(80, 90),
                Band.atMost(0.53),
                LIGHT_UMOL,
                new Band(4, 4),
                MistRegime.RUNNING,
                UNFED_EC,
                new Band(0, 50));
    }

    private static StageRecipe callusing() {
        return new StageRecipe(
                Phase.CALLUSING,
                PROPAGATION_MEDIUM_C,
                PROPAGATION_DAY_C,
                PROPAGATION_NIGHT_C,
                new Band(80, 90),
                Band.atMost(0.7),
                LIGHT_UMOL,
                new Band(4, 4),
                MistRegime.WEANING,
                UNFED_EC,
                new Band(0, 50));
    }

    private static StageRecipe rooting() {
        return new StageRecipe(
                Phase.ROOTING,
                PROPAGATION_MEDIUM_C,
                PROPAGATION_DAY_C,
                PROPAGATION_NIGHT_C,
                new Band(60, 90),
                Band.atMost(1.2),
                LIGHT_UMOL,
                new Band(3, 4),
                MistRegime.NIGHT_OFF,
                UNFED_EC,
                new Band(75, 100));
    }

    private static StageRecipe filling() {
        return new StageRecipe(
                Phase.FILLING,
                new Band(18, 23.3),
                new Band(18, 26.7),
                new Band(16, 26.7),
                new Band(50, 90),
                Band.atMost(1.6),
                new Band(260, 500),
                new Band(3, 4),
                MistRegime.NONE,
                FED_EC,
                new Band(75, 150));
    }

    private static StageRecipe toning() {
        return new StageRecipe(
                Phase.TONING,
                new Band(16, 23.3),
                new Band(16, 26.7),
                new Band(14, 26.7),
                new Band(40, 90),
                Band.atMost(2),
                new Band(260, 600),
                new Band(2, 3),
                MistRegime.NONE,
                FED_EC,
                new Band(75, 150));
    }
}
