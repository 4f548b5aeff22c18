package rootcast.crop;

import java.util.List;

/**
 * What a crop's own record says of the dates and ranges that the model gives: by days ahead, which of the model's quantiles were the 10,
 * 50 and 90 % points in truth.
 *
 * <p>Quantiles are told in ranges: 0 is the model's median and 1 its 90 % point, in standard normal scores over that of 0.9. Where the model
 * is right they are −1, 0 and 1; with −1.3, 0.1 and 1.5 ranges are 1.4 times as wide, and dates a tenth of half a range later.
 *
 * @param knots in order of lead; none if nothing is known
 */
public record Calibration(List<Knot> knots) {

    /** The model's own dates and ranges. */
    public static final Calibration NONE = new Calibration(List.of());

    /**
     * At one lead.
     *
     * @param leadDays from now to the middling date, over 0
     * @param early    the model's quantile that was the 10 % point
     * @param middle   the same of the median
     * @param late     the same of the 90 % point
     * @param batches  as many batches, each for itself, this rests on
     */
    public record Knot(double leadDays, double early, double middle, double late, double batches) {

        /** No record has put the ends of a range nearer together or further apart than this. */
        private static final double FURTHEST = 10;

        public Knot {
            if (!(leadDays > 0 && batches >= 0)) {
                throw new IllegalArgumentException("lead %s and batches %s".formatted(leadDays, batches));
            }
            if (!(-FURTHEST <= early && early < middle && middle < late && late <= FURTHEST)) {
                throw new IllegalArgumentException("%s, %s and %s must rise".formatted(early, middle, late));
            }
        }

        /** Where the model's quantile lies that is a quantile in truth, both told in ranges; rises with it. */
        public double model(double truth) {
            return truth < 0 ? middle + truth * (middle - early) : middle + truth * (late - middle);
        }

        /** So many times as wide as the model's is the range between the 10 and 90 % points. */
        public double width() {
            return (late - early) / 2;
        }

        private Knot towards(Knot next, double days, double part) {
            return new Knot(
                    days,
                    early + part * (next.early - early),
                    middle + part * (next.middle - middle),
                    late + part * (next.late - late),
                    batches + part * (next.batches - batches));
        }
    }

    public Calibration {
        knots = List.copyOf(knots);
        for (int i = 1; i < knots.size(); i++) {
            if (knots.get(i).leadDays <= knots.get(i - 1).leadDays) {
                throw new IllegalArgumentException("leads must rise, not " + knots);
            }
        }
    }

    public boolean isNone() {
        return knots.isEmpty();
    }

    /**
     * At a lead: straight in its logarithm between knots, that of the nearest outside of them.
     *
     * @param leadDays any; a date that has passed is as one of the shortest lead
     */
    public Knot at(double leadDays) {
        int next = 0;
        while (next < knots.size() && knots.get(next).leadDays < leadDays) {
            next++;
        }
        if (next == 0 || next == knots.size()) {
            return knots.get(Math.max(0, next - 1));
        }
        Knot before = knots.get(next - 1);
        Knot after = knots.get(next);
        double part = Math.log(leadDays / before.leadDays) / Math.log(after.leadDays / before.leadDays);
        return before.towards(after, leadDays, part);
    }
}
