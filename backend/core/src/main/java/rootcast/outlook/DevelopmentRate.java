package rootcast.outlook;

import rootcast.crop.Cardinals;
import rootcast.crop.FigureOutOfRange;

/**
 * How fast a stage runs at a temperature.
 *
 * <p>One reference-day is what a day at the reference temperature brings, so the rate is f(T) / f(Tref) reference-days
 * per day. f is 1 at the optimum and 0 at and outside minimum and maximum. BETA: f = (Tx − T)/(Tx − To) · ((T − Tn)/(To
 * − Tn))^((To − Tn)/(Tx − To)). LINEAR: f = (T − Tn)/(To − Tn) up to the optimum, then 1.
 *
 * <p>Source: Yin, Kropff, McLaren and Visperas 1995, Agric. For. Meteorol. 77:1-16, with shape exponent 1, which is the
 * form of Yan and Hunt 1999, Annals of Botany 84:607-614, moved to a minimum other than 0 °C.
 */
public final class DevelopmentRate {

    /** Nearer to zero the days at the reference temperature say nothing about any other temperature. */
    private static final double LEAST_AT_REFERENCE = 1e-3;

    private final Cardinals cardinals;
    private final double exponent;
    private final double atReference;

    /**
     * @throws IllegalArgumentException if hardly anything develops at the reference temperature
     */
    public DevelopmentRate(Cardinals cardinals) {
        this.cardinals = cardinals;
        this.exponent = (cardinals.optimumC() - cardinals.minC()) / (cardinals.maxC() - cardinals.optimumC());
        this.atReference = response(cardinals.referenceC());
        if (!(atReference >= LEAST_AT_REFERENCE)) {
            throw new FigureOutOfRange(
                    "at the reference %s °C development runs at %s of its fastest; at least %s"
                            .formatted(cardinals.referenceC(), atReference, LEAST_AT_REFERENCE),
                    "referenceC",
                    cardinals.referenceC(),
                    cardinals.minC(),
                    cardinals.maxC());
        }
    }

    /** Share of the fastest rate, 0 to 1. */
    public double response(double celsius) {
        if (celsius <= cardinals.minC() || celsius >= cardinals.maxC()) {
            return 0;
        }
        double rise = (celsius - cardinals.minC()) / (cardinals.optimumC() - cardinals.minC());
        return switch (cardinals.form()) {
            case LINEAR -> Math.min(rise, 1);
            case BETA ->
                (cardinals.maxC() - celsius) / (cardinals.maxC() - cardinals.optimumC()) * Math.pow(rise, exponent);
        };
    }

    /** Reference-days per day. */
    public double perDay(double celsius) {
        return response(celsius) / atReference;
    }
}
