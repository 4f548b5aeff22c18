package rootcast.outlook;

/**
 * How much of what is uncertain of a batch's date it has in common with others: batches that ripen in one house have its weather to come, and
 * batches of one crop the crop's days, which may be out for all of them alike.
 *
 * @param house     in which it is expected to get ready
 * @param ofWeather share of the variance of the date that comes from the temperatures to come there, 0 to 1
 * @param ofDays    share that comes from how far the crop's days may be out, 0 to 1; the rest is the batch's own
 */
public record SharedDoubt(String house, double ofWeather, double ofDays) {

    public SharedDoubt {
        if (!(ofWeather >= 0 && ofDays >= 0 && ofWeather + ofDays <= 1 + 1e-9)) {
            throw new IllegalArgumentException("shares %s and %s".formatted(ofWeather, ofDays));
        }
    }

    double own() {
        return Math.max(0, 1 - ofWeather - ofDays);
    }
}
