package rootcast.feed;

/**
 * A concentrate that an injector thins to a feed.
 *
 * <p>One gram in a litre is 1 000 mg/L, of which N % is nitrogen: a stock of {@code c} g/L behind an injector of 1:D gives
 * {@code c · N · 10 / D} ppm. Printed charts run about 1.25 % above it.
 *
 * <p>Units: ppm is mg of nitrogen in a litre. Source: g/L = ppm·D/(%N·10), as extension fact sheets print it beside oz/gal =
 * ppm·D/(%N·75); the latter rounds 74.9, so ounces are converted from grams here.
 *
 * @param nitrogenPercent weight of nitrogen in 100 of fertilizer, as on the bag
 * @param injector        parts of feed from one of stock, the D of 1:D; 1 is a tank that is fed from directly
 */
public record Stock(double nitrogenPercent, double injector) {

    public Stock {
        Bounds.over("nitrogenPercent", nitrogenPercent, 0, 100);
        Bounds.within("injector", injector, 1, 10_000);
    }

    /** Fertilizer in a litre of stock, so that the feed has so much nitrogen, g/L. */
    public double gramsPerLitre(double ppm) {
        Bounds.within("ppm", ppm, 0, 10_000);
        return ppm * injector / (nitrogenPercent * 10);
    }

    /** The same as ounces in a US gallon of stock. */
    public double ouncesPerGallon(double ppm) {
        return Measure.OUNCE.ofBase(gramsPerLitre(ppm) * Measure.US_GALLON.toBase(1));
    }

    /** Nitrogen of the feed from so strong a stock, ppm. */
    public double ppm(double gramsPerLitre) {
        Bounds.within("gramsPerLitre", gramsPerLitre, 0, 1_000);
        return gramsPerLitre * nitrogenPercent * 10 / injector;
    }

    /** What the injector must be set to, so that a stock gives so much nitrogen. */
    public static double injectorFor(double nitrogenPercent, double gramsPerLitre, double ppm) {
        Bounds.over("nitrogenPercent", nitrogenPercent, 0, 100);
        Bounds.over("gramsPerLitre", gramsPerLitre, 0, 1_000);
        Bounds.over("ppm", ppm, 0, 10_000);
        return gramsPerLitre * nitrogenPercent * 10 / ppm;
    }

    /** Feed from so much stock, in the unit the stock is given in. */
    public double feedVolume(double stockVolume) {
        return stockVolume * injector;
    }
}
