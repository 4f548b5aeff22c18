package rootcast.app.feed;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** No database is touched, so one of them is enough. */
@QuarkusTest
class FeedOverHttpTest {

    /** Extension fact sheet (V): 20-10-20 at 200 ppm, 1:100: 13.5 oz per gallon; 5 gal of stock make 500 gal of feed. */
    @Test
    void aStockTankInTheUnitsOfTheOtherSystem() {
        JsonPath answer = post(
                        "stock",
                        Map.of(
                                "nitrogenPercent",
                                20,
                                "ppm",
                                200,
                                "injector",
                                100,
                                "stockVolume",
                                amount(5, "[gal_us]")))
                .statusCode(200)
                .body("expectedMsPerCm", nullValue())
                .extract()
                .jsonPath();

        assertThat(answer.getDouble("ouncesPerGallon")).isCloseTo(13.5, withinPercentage(2));
        assertThat(answer.getDouble("fertilizer.find { it.unit == '[oz_av]' }.value"))
                .isCloseTo(67.5, withinPercentage(2));
        assertThat(answer.getDouble("feedVolume.find { it.unit == '[gal_us]' }.value"))
                .isCloseTo(500, within(1e-6));
    }

    /** By hand: 100 g in 10 L are 10 g/L; 15 % of it is 1 500 ppm, and 1:100 makes 15. */
    @Test
    void theStrengthOfAStockAndTheInjectorForIt() {
        Map<String, Object> stock = new HashMap<>(
                Map.of("nitrogenPercent", 15, "fertilizer", amount(100, "g"), "stockVolume", amount(10, "L")));
        stock.put("injector", 100);
        assertThat(post("strength", stock).statusCode(200).extract().jsonPath().getDouble("ppm"))
                .isCloseTo(15, within(1e-9));
        stock.remove("injector");
        stock.put("ppm", 15);
        post("injector", stock).statusCode(200).body("ratio", equalTo("1:100.0"));
    }

    @Test
    void conductivityBelowClearWaterIsRefused() {
        Map<String, Object> meter =
                new HashMap<>(Map.of("measuredMsPerCm", 1.72, "clearWaterMsPerCm", 0.4, "msPerCmPer100Ppm", 0.66));
        assertThat(post("ec", meter).statusCode(200).extract().jsonPath().getDouble("ppm"))
                .isCloseTo(200, within(1e-9));
        meter.put("measuredMsPerCm", 0.3);
        post("ec", meter).statusCode(422).body("errors[0].field", equalTo("measuredMsPerCm"));
    }

    /** By hand: 30 mg/L in 10 L are 300 mg; 4 mg/mL holds them in 75 mL. */
    @Test
    void aRateTypedFromALabelIsDilutedWithTheCautions() {
        JsonPath answer = post(
                        "dilution",
                        Map.of(
                                "label",
                                "30 ppm as a spray",
                                "activePpm",
                                30,
                                "activeMgPerMl",
                                4,
                                "sprayVolume",
                                amount(10, "L")))
                .statusCode(200)
                .body("label", equalTo("30 ppm as a spray"))
                .body("cautions[0]", containsString("label"))
                .extract()
                .jsonPath();

        assertThat(answer.getDouble("product.find { it.unit == 'mL' }.value")).isCloseTo(75, within(1e-9));
    }

    /** By hand: 1 fl oz in 1 gal is 1 in 128; 60 m² at 0.2 L are 12 L, of which 93.75 mL. */
    @Test
    void aRateByVolumeForAnArea() {
        JsonPath answer = post(
                        "dilution",
                        Map.of(
                                "label",
                                "1 fl oz per gallon, 0.2 L per square metre",
                                "product",
                                amount(1, "[foz_us]"),
                                "perVolume",
                                amount(1, "[gal_us]"),
                                "areaM2",
                                60,
                                "litresPerM2",
                                0.2))
                .statusCode(200)
                .extract()
                .jsonPath();

        assertThat(answer.getDouble("product.find { it.unit == 'mL' }.value")).isCloseTo(93.75, within(1e-6));
    }

    @Test
    void withoutARateFromTheLabelThereIsNoAnswer() {
        post("dilution", Map.of("label", "it says", "sprayVolume", amount(10, "L")))
                .statusCode(400)
                .body("errors[0].field", equalTo("product"));
        post("dilution", Map.of("activePpm", 30, "activeMgPerMl", 4, "sprayVolume", amount(10, "L")))
                .statusCode(400)
                .body("errors[0].field", equalTo("label"));
    }

    @Test
    void unitsAndNumbersThatCannotBeAreNamed() {
        Map<String, Object> stock = new HashMap<>(
                Map.of("nitrogenPercent", 20, "ppm", 200, "injector", 100, "stockVolume", amount(5, "barrel")));
        post("stock", stock).statusCode(422).body("errors[0].field", equalTo("stockVolume.unit"));
        stock.put("stockVolume", amount(5, "g"));
        post("stock", stock).statusCode(422).body("errors[0].field", equalTo("stockVolume.unit"));
        stock.put("stockVolume", amount(0, "L"));
        post("stock", stock).statusCode(422).body("errors[0].field", equalTo("stockVolume.value"));
        stock.put("stockVolume", amount(5, "L"));
        stock.put("nitrogenPercent", 0);
        post("stock", stock).statusCode(422).body("errors[0].field", equalTo("nitrogenPercent"));
    }

    private static Map<String, Object> amount(double value, String unit) {
        return Map.of("value", value, "unit", unit);
    }

    private static ValidatableResponse post(String what, Map<String, ?> body) {
        return given().contentType(ContentType.JSON)
                .body(body)
                .post("/api/feed/" + what)
                .then();
    }
}
