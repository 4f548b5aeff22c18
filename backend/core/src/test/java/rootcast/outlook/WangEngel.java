package rootcast.outlook;

/**
 * Another response of development to temperature than the model's: for tests that need a truth of another form.
 *
 * <p>α = ln 2 / ln((Tx − Tn)/(To − Tn)), f = (2(T − Tn)^α (To − Tn)^α − (T − Tn)^2α) / (To − Tn)^2α.
 *
 * <p>Source: Wang and Engel 1998, Agricultural Systems 58:1-24 (equation seen quoted).
 */
public record WangEngel(double minC, double optimumC, double maxC) {

    public double response(double celsius) {
        if (celsius <= minC || celsius >= maxC) {
            return 0;
        }
        double alpha = Math.log(2) / Math.log((maxC - minC) / (optimumC - minC));
        double rise = Math.pow(celsius - minC, alpha);
        double toOptimum = Math.pow(optimumC - minC, alpha);
        return (2 * rise * toOptimum - rise * rise) / (toOptimum * toOptimum);
    }
}
