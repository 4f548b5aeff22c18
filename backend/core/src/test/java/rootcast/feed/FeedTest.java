package rootcast.feed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FeedTest {

    /**
     * Extension fact sheet and practice sheet (V: seen). The last line is ppm × D ÷ (%N × 75) by hand. Charts run about
     * 1.25 % above the formula, hence 2 %.
     */
    @ParameterizedTest(name = "{0} % N at {1} ppm, 1:{2}: {3} oz per gallon of stock")
    @CsvSource({
        "20, 200, 100, 13.5",
        "15, 200, 100, 18",
        "15,  50, 100, 4.5",
        "15, 100, 100, 9",
        "20, 150, 200, 20.25",
        "10, 100, 128, 17.07"
    })
    void stockByThePrintedCharts(double nitrogenPercent, double ppm, double injector, double ouncesPerGallon) {
        assertThat(new Stock(nitrogenPercent, injector).ouncesPerGallon(ppm))
                .isCloseTo(ouncesPerGallon, withinPercentage(2));
    }

    /** V: 20 % N, 150 ppm, 100 L direct takes 75 g. */
    @Test
    void aTankFedFromDirectly() {
        assertThat(new Stock(20, 1).gramsPerLitre(150) * 100).isCloseTo(75, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"20, 100, 200", "15, 200, 75", "9, 16, 130.5"})
    void strengthAndInjectorUndoTheWeight(double nitrogenPercent, double injector, double ppm) {
        Stock stock = new Stock(nitrogenPercent, injector);
        double gramsPerLitre = stock.gramsPerLitre(ppm);

        assertThat(stock.ppm(gramsPerLitre)).isCloseTo(ppm, within(1e-9));
        assertThat(Stock.injectorFor(nitrogenPercent, gramsPerLitre, ppm)).isCloseTo(injector, within(1e-9));
    }

    /** By hand: 50 L of stock at 1:100 make 5 000 L of feed. */
    @Test
    void stockGoesAsFarAsTheInjectorSays() {
        assertThat(new Stock(20, 100).feedVolume(50)).isEqualTo(5_000);
    }

    /** Exact by definition: 231 cubic inches of 2.54 cm each; 16 ounces of 28.349523125 g. */
    @Test
    void unitsOfBothSystems() {
        assertThat(Measure.US_GALLON.toBase(1)).isCloseTo(231 * Math.pow(2.54, 3) / 1_000, within(1e-12));
        assertThat(Measure.US_FLUID_OUNCE.toBase(128)).isCloseTo(Measure.US_GALLON.toBase(1), within(1e-12));
        assertThat(Measure.OUNCE.toBase(1)).isEqualTo(28.349523125);
        assertThat(Measure.POUND.ofBase(453.59237)).isEqualTo(1);
        assertThat(Measure.ofUcum("[gal_us]")).contains(Measure.US_GALLON);
        assertThat(Measure.ofUcum("gallon")).isEmpty();
    }

    @Nested
    class Conductivity {

        /** By hand: clear water 0.4, 0.66 mS/cm for 100 ppm; 1.72 shows 1.32 of feed, that is 200 ppm. */
        @Test
        void isMeasuredLessClearWater() {
            FeedSalts salts = new FeedSalts(0.4, 0.66);

            assertThat(salts.ppm(1.72)).isCloseTo(200, within(1e-9));
            assertThat(salts.expectedMsPerCm(200)).isCloseTo(1.72, within(1e-9));
        }

        @Test
        void belowClearWaterIsRefusedWithBothNumbers() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new FeedSalts(0.8, 0.66).ppm(0.5))
                    .withMessageContaining("0.5")
                    .withMessageContaining("0.8");
        }
    }

    @Nested
    class RatesFromALabel {

        /** By hand: 2.5 mL in a litre, 20 L of spray: 50 mL. */
        @Test
        void byVolume() {
            assertThat(new LabelRate.PerVolume(2.5).productFor(20)).isCloseTo(50, within(1e-12));
        }

        /** By hand: 30 mg/L in 10 L are 300 mg; a liquid with 4 mg in a mL holds them in 75 mL. */
        @Test
        void byPpmOfAnActiveIngredient() {
            assertThat(new LabelRate.Ppm(30, 4).productFor(10)).isCloseTo(75, within(1e-12));
        }

        /** By hand: 2 500 mg/L in 4 L are 10 g; a powder with 85 % holds them in 11.76 g. */
        @Test
        void byPpmOfAPowder() {
            assertThat(LabelRate.Ppm.ofPercent(2_500, 85).productFor(4)).isCloseTo(11.7647, within(1e-4));
        }

        /** By hand: 60 m² at 0.2 L each are 12 L. */
        @Test
        void anAreaTakesWhatTheLabelSaysASquareMetreIsToGet() {
            assertThat(LabelRate.sprayLitres(60, 0.2)).isCloseTo(12, within(1e-12));
        }
    }

    @ParameterizedTest(name = "{0} % N, 1:{1}, {2} ppm")
    @CsvSource({"0, 100, 100", "101, 100, 100", "20, 0.5, 100", "20, 100, -1", "NaN, 100, 100", "20, 100, NaN"})
    void whatCannotBeMeantIsRefused(double nitrogenPercent, double injector, double ppm) {
        assertThatIllegalArgumentException().isThrownBy(() -> new Stock(nitrogenPercent, injector).gramsPerLitre(ppm));
    }
}
