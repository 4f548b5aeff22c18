package rootcast.app.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.equalTo;

import io.agroal.api.AgroalDataSource;
import io.restassured.path.json.JsonPath;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** The profiles that come with the application; figures as seed/profiles and seed/recipes.csv have them. */
abstract class SeededCropsContract {

    private static final String PATH = "/api/seeded-crops";

    @Inject
    AgroalDataSource database;

    @Test
    void thereAreFifteenEachWithItsSources() {
        JsonPath seeded = Nursery.get(PATH);

        assertThat(seeded.getList("code"))
                .hasSize(15)
                .contains("verbena", "zonal-geranium", "sweet-potato-vine")
                .doesNotHaveDuplicates();
        assertThat(seeded.getList("profile.stages.source.flatten()", String.class))
                .hasSize(45)
                .allSatisfy(source -> assertThat(source).contains("common practice"));
        assertThat(seeded.getList("recipeSource", String.class))
                .allSatisfy(source -> assertThat(source).isNotBlank());
        assertThat(seeded.getList("find { it.code == 'verbena' }.profile.stages.daysAtReference", Float.class))
                .containsExactly(6f, 8f, 7f);
    }

    @Test
    void severalAreTakenInOneGoWithProfileAndRecipeAndOnlyOnceUnderOneKey() {
        String key = UUID.randomUUID().toString();
        Object wanted = Map.of("crops", List.of("lavender", "scaevola"));

        Nursery.send(key, PATH, wanted).then().statusCode(201).body("crops", contains("lavender", "scaevola"));
        Nursery.send(key, PATH, wanted).then().statusCode(201);

        JsonPath lavender = Nursery.get("/api/crops/lavender");
        assertThat(lavender.getString("name")).isEqualTo("Lavender");
        assertThat(lavender.getString("profile.stages[0].source")).contains("daysAtReference: common practice");
        assertThat(Nursery.get("/api/crops/scaevola/recipe").getString("mistNeed"))
                .isEqualTo("HEAVY");
        assertThat(Nursery.get("/api/crops/scaevola/recipe/versions").getList("$"))
                .hasSize(1);
        assertThat(Nursery.get(PATH).getBoolean("find { it.code == 'scaevola' }.taken"))
                .isTrue();
    }

    @Test
    void oneThatIsTakenOrThatThereIsNotKeepsTheOthersOut() throws Exception {
        Nursery.send(UUID.randomUUID().toString(), PATH, Map.of("crops", List.of("bacopa")))
                .then()
                .statusCode(201);
        var tables = new Tables(database);
        var before = tables.everything();

        Nursery.send(UUID.randomUUID().toString(), PATH, Map.of("crops", List.of("osteospermum", "bacopa")))
                .then()
                .statusCode(409)
                .body("asked", equalTo("bacopa"));
        Nursery.send(UUID.randomUUID().toString(), PATH, Map.of("crops", List.of("osteospermum", "moon-flower")))
                .then()
                .statusCode(422)
                .body("asked", equalTo("moon-flower"));

        assertThat(tables.everything()).isEqualTo(before);
    }
}
