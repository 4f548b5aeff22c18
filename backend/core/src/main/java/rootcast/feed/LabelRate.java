package rootcast.feed;

/**
 * A rate that somebody has read off a label and typed in. The amount follows from it; whether it is right, allowed or wise
 * does not.
 */
public sealed interface LabelRate {

    /** So much product in so much water: {@code productAmount} in the unit of the product, per litre. */
    record PerVolume(double productPerLitre) implements LabelRate {

        public PerVolume {
            Bounds.over("productPerLitre", productPerLitre, 0, 1_000);
        }

        @Override
        public double productFor(double sprayLitres) {
            Bounds.over("sprayLitres", sprayLitres, 0, 1_000_000);
            return productPerLitre * sprayLitres;
        }
    }

    /**
     * So many ppm of active ingredient, in mg per litre of spray.
     *
     * @param activePpm        as the label gives it
     * @param activeMgPerUnit  active ingredient in one unit of product: mg in 1 mL, or mg in 1 g
     */
    record Ppm(double activePpm, double activeMgPerUnit) implements LabelRate {

        public Ppm {
            Bounds.over("activePpm", activePpm, 0, 100_000);
            Bounds.within("activeMgPerUnit", activeMgPerUnit, 0.001, 1_000);
        }

        /** A liquid with so many percent active ingredient by volume of water-like density, or a solid by weight: 1 % is 10. */
        public static Ppm ofPercent(double activePpm, double activePercent) {
            return new Ppm(activePpm, activePercent * 10);
        }

        @Override
        public double productFor(double sprayLitres) {
            Bounds.over("sprayLitres", sprayLitres, 0, 1_000_000);
            return activePpm * sprayLitres / activeMgPerUnit;
        }
    }

    /** Product for a tank: in millilitres or grams where the rate is per litre in those, else in the rate's own unit. */
    double productFor(double sprayLitres);

    /** Litres of spray for an area, by what the label says a square metre is to get. */
    static double sprayLitres(double areaM2, double litresPerM2) {
        Bounds.over("areaM2", areaM2, 0, 1_000_000);
        Bounds.over("litresPerM2", litresPerM2, 0, 100);
        return areaM2 * litresPerM2;
    }
}
