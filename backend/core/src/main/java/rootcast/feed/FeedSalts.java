package rootcast.feed;

/**
 * What the conductivity of a feed says of its nitrogen.
 *
 * <p>EC of the feed is what the meter shows less what the clear water has; it rises with nitrogen in a straight line whose
 * slope belongs to the fertilizer and stands on its label.
 *
 * @param clearWaterMsPerCm EC of the water without fertilizer, mS/cm
 * @param msPerCmPer100Ppm  EC that 100 ppm nitrogen of this fertilizer adds, mS/cm
 */
public record FeedSalts(double clearWaterMsPerCm, double msPerCmPer100Ppm) {

    public FeedSalts {
        Bounds.within("clearWaterMsPerCm", clearWaterMsPerCm, 0, 20);
        Bounds.over("msPerCmPer100Ppm", msPerCmPer100Ppm, 0, 20);
    }

    /** What the meter should show, mS/cm. */
    public double expectedMsPerCm(double ppm) {
        return clearWaterMsPerCm + ppm * msPerCmPer100Ppm / 100;
    }

    /** Nitrogen by the meter, ppm; a reading below that of the clear water is refused. */
    public double ppm(double measuredMsPerCm) {
        Bounds.within("measuredMsPerCm", measuredMsPerCm, clearWaterMsPerCm, 50);
        return (measuredMsPerCm - clearWaterMsPerCm) * 100 / msPerCmPer100Ppm;
    }
}
