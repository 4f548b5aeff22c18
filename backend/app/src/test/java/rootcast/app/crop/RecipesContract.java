package rootcast.app.crop;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import io.restassured.http.ContentType;
import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Recipes by HTTP. Values are those of common practice (CP, no source). */
abstract class RecipesContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;
    private String path;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
        path = "/api/crops/" + nursery.crop + "/recipe";
    }

    @Test
    void aCropHasCommonPracticeUntilSomebodyEditsIt() {
        JsonPath recipe = Nursery.get(path);

        assertThat(recipe.getInt("version")).isZero();
        assertThat(recipe.getString("note")).isEqualTo("common practice, no source");
        assertThat(recipe.getString("mistNeed")).isEqualTo("MEDIUM");
        assertThat(recipe.getList("phases.phase"))
                .containsExactly("STICKING", "CALLUSING", "ROOTING", "FILLING", "TONING");
        assertThat(recipe.getList("phases.mist")).containsExactly("RUNNING", "WEANING", "NIGHT_OFF", "NONE", "NONE");
        assertThat(recipe.getDouble("phases[0].mediumC.least")).isEqualTo(20);
        assertThat(recipe.getDouble("phases[0].mediumC.most")).isEqualTo(23.3);
        assertThat(recipe.<Object>get("phases[0].deficitKpa.least")).isNull();
        assertThat(Nursery.get(path + "/versions").getList("$")).isEmpty();
    }

    @Test
    void theMistNeedAloneTakesCommonPracticeForIt() {
        put(Map.of("mistNeed", "HEAVY"))
                .statusCode(200)
                .body("version", equalTo(1))
                .body("fullMistDays", equalTo(5));

        assertThat(Nursery.get(path).getInt("fullMistDays")).isEqualTo(5);
    }

    @Test
    void aChangeIsAVersionAndTheSameAgainIsNone() {
        Map<String, Object> changed = read();
        changed.put("fullMistDays", 6);
        changed.put("note", "our own trial, bench 4");

        put(changed).statusCode(200).body("version", equalTo(1));
        put(changed).statusCode(200).body("version", equalTo(1));
        changed.put("fullMistDays", 7);
        put(changed).statusCode(200).body("version", equalTo(2));

        JsonPath versions = Nursery.get(path + "/versions");
        assertThat(versions.getList("version")).containsExactly(2, 1);
        assertThat(versions.getList("fullMistDays")).containsExactly(7, 6);
        assertThat(versions.getList("note")).containsOnly("our own trial, bench 4");
    }

    @Test
    void aBandUpsideDownIsRefusedWithItsNumbersAndNothingIsWritten() {
        Map<String, Object> changed = read();
        phase(changed, 2).put("mediumC", Map.of("least", 24, "most", 20));

        put(changed)
                .statusCode(422)
                .body("errors[0].field", equalTo("phases[2].mediumC.least"))
                .body("errors[0].code", equalTo("not-rising"))
                .body("errors[0].values.first", equalTo(24.0f))
                .body("errors[0].values.second", equalTo(20.0f));

        assertThat(Nursery.get(path).getInt("version")).isZero();
    }

    @Test
    void anOpenEndStaysOpen() {
        Map<String, Object> changed = read();
        Map<String, Object> open = new LinkedHashMap<>();
        open.put("least", 60);
        open.put("most", null);
        phase(changed, 2).put("humidityPercent", open);

        put(changed).statusCode(200).body("phases[2].humidityPercent.most", nullValue());
    }

    @Test
    void whatIsMissingOrUnknownIsNamed() {
        put(Map.of("fullMistDays", 4)).statusCode(400).body("errors[0].field", equalTo("mistNeed"));
        put(Map.of("mistNeed", "LIGHT", "colour", "red")).statusCode(400).body("detail", containsString("colour"));
        Map<String, Object> short4 = read();
        short4.put("phases", ((List<?>) short4.get("phases")).subList(0, 4));
        put(short4).statusCode(400);
        given().get("/api/crops/no-such-crop/recipe").then().statusCode(404);
        given().contentType(ContentType.JSON)
                .body(Map.of("mistNeed", "LIGHT"))
                .put("/api/crops/no-such-crop/recipe")
                .then()
                .statusCode(404);
    }

    private Map<String, Object> read() {
        return Nursery.get(path).getMap("$");
    }

    @SuppressWarnings("unchecked")
    private static Map<String, Object> phase(Map<String, Object> recipe, int index) {
        return ((List<Map<String, Object>>) recipe.get("phases")).get(index);
    }

    private ValidatableResponse put(Object body) {
        return given().contentType(ContentType.JSON).body(body).put(path).then();
    }
}
