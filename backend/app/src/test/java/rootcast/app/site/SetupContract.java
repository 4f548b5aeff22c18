package rootcast.app.site;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.contains;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;

import io.restassured.http.ContentType;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Setting up sites, houses, tray formats, crops and varieties, seen from outside. */
abstract class SetupContract {

    @Inject
    HandSetClock time;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void aSiteIsListedAndShipsOnMondaysUnlessItSaysOtherwise() {
        given().get("/api/sites/" + nursery.site)
                .then()
                .statusCode(200)
                .body("code", equalTo(nursery.site))
                .body("timeZone", equalTo("Etc/UTC"))
                .body("shipDay", equalTo("MONDAY"));
        given().get("/api/sites").then().statusCode(200).body("code", hasItem(nursery.site));
    }

    @Test
    void everyListNamesWhatWasSetUp() {
        itemsByPath()
                .forEach((path, item) ->
                        given().get("/api/" + path).then().statusCode(200).body("code", hasItem(item.get("code"))));
    }

    @Test
    void aCodeThatIsTakenIsAConflictThatNamesIt() {
        itemsByPath()
                .forEach((path, item) -> nursery.post("/api/" + path, item)
                        .statusCode(409)
                        .contentType("application/problem+json")
                        .body("type", equalTo("/problems/code-taken"))
                        .body("asked", equalTo(item.get("code"))));
    }

    @Test
    void aCodeThatIsNotThereIsNotFound() {
        itemsByPath().forEach((path, item) -> {
            given().get("/api/" + path + "/nobody").then().statusCode(404).body("type", equalTo("/problems/not-found"));
            put("/api/" + path + "/nobody", with(item, "code", "nobody")).statusCode(404);
        });
    }

    @Test
    void puttingWhatIsThereAnswersTheSame() {
        itemsByPath()
                .forEach((path, item) -> put("/api/" + path + "/" + item.get("code"), item)
                        .statusCode(200)
                        .body("code", equalTo(item.get("code"))));
    }

    @Test
    void aCodeIsNeverChanged() {
        itemsByPath()
                .forEach((path, item) -> put("/api/" + path + "/" + item.get("code"), with(item, "code", "other"))
                        .statusCode(422)
                        .body("errors.field", contains("code")));
    }

    @Test
    void aFieldThatNobodyKnowsIsNamedAndRefused() {
        itemsByPath()
                .forEach((path, item) -> nursery.post("/api/" + path, with(item, "colour", "blue"))
                        .statusCode(400)
                        .body("errors.field", contains("colour"))
                        .body("detail", containsString("colour")));
    }

    @Test
    void aFieldThatIsMissingIsNamed() {
        itemsByPath()
                .forEach((path, item) -> item.keySet()
                        .forEach(field -> nursery.post("/api/" + path, without(item, field))
                                .statusCode(400)
                                .body("errors.field", contains(field))));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "-x", "a b", "a/b", "ünd", "a\u0000b", "123456789012345678901234567890123"})
    void aCodeOfTheWrongShapeIsRefused(String code) {
        itemsByPath()
                .forEach((path, item) -> nursery.post("/api/" + path, with(item, "code", code))
                        .statusCode(400)
                        .body("errors.field", contains("code")));
    }

    @Test
    void whatRefersToAnUnknownCodeIsRefused() {
        nursery.post("/api/houses", Map.of("code", "h-x", "site", "nowhere", "name", "x"))
                .statusCode(422)
                .body("type", equalTo("/problems/unknown-code"))
                .body("asked", equalTo("nowhere"));
        nursery.post("/api/varieties", Map.of("code", "v-x", "crop", "nothing", "name", "x"))
                .statusCode(422)
                .body("type", equalTo("/problems/unknown-code"))
                .body("asked", equalTo("nothing"));
        given().get("/api/houses/h-x").then().statusCode(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"Middle/Earth", "", "+99:00", "America/chicago "})
    void aTimeZoneThatIsNoneIsRefused(String zone) {
        nursery.post("/api/sites", Map.of("code", "z-x", "name", "x", "timeZone", zone))
                .statusCode(422)
                .body("errors.field", contains("timeZone"));
    }

    @Test
    void aSiteMayShipOnAnotherDay() {
        put("/api/sites/" + nursery.site, with(nursery.siteBody("America/Chicago"), "shipDay", "WEDNESDAY"))
                .statusCode(200)
                .body("shipDay", equalTo("WEDNESDAY"))
                .body("timeZone", equalTo("America/Chicago"));
        nursery.post("/api/sites", with(nursery.siteBody("Etc/UTC"), "shipDay", "SOMEDAY"))
                .statusCode(400)
                .body("errors.field", contains("shipDay"));
    }

    @Test
    void aHouseStaysOnItsSiteAndMayGetASetPoint() {
        Nursery elsewhere = Nursery.opened(time);
        Map<String, Object> house = Map.of("code", nursery.house, "site", nursery.site, "name", "North");
        put("/api/houses/" + nursery.house, with(house, "mediumSetpointC", 21.5))
                .statusCode(200)
                .body("mediumSetpointC", equalTo(21.5f));
        put("/api/houses/" + nursery.house, with(house, "site", elsewhere.site))
                .statusCode(422)
                .body("errors.field", contains("site"));
        put("/api/houses/" + nursery.house, with(house, "mediumSetpointC", 41)).statusCode(400);
    }

    @Test
    void aTrayFormatKeepsItsCellsAndItsSaleCount() {
        String path = "/api/tray-formats/" + nursery.trayFormat;
        Map<String, Object> format = Nursery.formatBody(nursery.trayFormat);
        put(path, with(format, "cells", 99)).statusCode(422).body("errors.field", contains("cells"));
        put(path, with(format, "saleCount", 89)).statusCode(422).body("errors.field", contains("saleCount"));
        put(path, with(format, "lengthMm", 541)).statusCode(200).body("lengthMm", equalTo(541));
    }

    @Test
    void aTrayFormatThatCannotBeBuiltIsRefused() {
        Map<String, Object> format = Nursery.formatBody("t-x");
        Map<String, Object> offences = Map.of("cells", 0, "saleCount", 101, "lengthMm", -1, "widthMm", 5001);
        offences.forEach((field, value) ->
                nursery.post("/api/tray-formats", with(format, field, value)).statusCode(422));
        nursery.post("/api/tray-formats", with(format, "cells", 100.5)).statusCode(400);
        nursery.post("/api/tray-formats", with(format, "cells", "100")).statusCode(400);
        given().get("/api/tray-formats/t-x").then().statusCode(404);
    }

    @Test
    void aChangedProfileBecomesTheNextVersionAndAnUnchangedOneDoesNot() {
        String path = "/api/crops/" + nursery.crop;
        given().get(path).then().body("profile.version", equalTo(1));

        put(path, Nursery.cropBody(nursery.crop, 7)).statusCode(200).body("profile.version", equalTo(1));
        put(path, Nursery.cropBody(nursery.crop, 6)).statusCode(200).body("profile.version", equalTo(2));
        put(path, Nursery.cropBody(nursery.crop, 6)).statusCode(200).body("profile.version", equalTo(2));
        put(path, Nursery.cropBody(nursery.crop, 7)).statusCode(200).body("profile.version", equalTo(3));

        given().get(path)
                .then()
                .body("profile.version", equalTo(3))
                .body("profile.stages.stage", contains("STICK", "CALLUS", "ROOT"))
                .body("profile.stages[0].daysAtReference", equalTo(7f))
                .body("profile.stages[0].form", equalTo("BETA"));
    }

    @Test
    void aProfileThatCannotBeTrueIsRefused() {
        refusedStages(List.of(Nursery.stage("STICK", 7), Nursery.stage("CALLUS", 9)))
                .statusCode(400);
        refusedStages(List.of(Nursery.stage("CALLUS", 7), Nursery.stage("STICK", 9), Nursery.stage("ROOT", 9)))
                .statusCode(422);
        refusedStages(secondStageWith("minC", 30))
                .statusCode(422)
                .body("errors.field", contains("profile.stages[1].optimumC"))
                .body("errors[0].code", equalTo("cardinals-not-rising"))
                .body("errors[0].values.minC", equalTo(30.0f));
        refusedStages(secondStageWith("maxC", 7))
                .statusCode(422)
                .body("errors.field", contains("profile.stages[1].maxC"));
        refusedStages(secondStageWith("referenceC", 36))
                .statusCode(422)
                .body("errors.field", contains("profile.stages[1].referenceC"))
                .body("errors[0].code", equalTo("reference-outside"));
        refusedStages(secondStageWith("survivalMean", 1))
                .statusCode(422)
                .body("errors.field", contains("profile.stages[1].survivalMean"));
        refusedStages(secondStageWith("daysAtReference", 0))
                .statusCode(422)
                .body("errors.field", contains("profile.stages[1].daysAtReference"));
        refusedStages(secondStageWith("stage", "SHIP")).statusCode(422);
        refusedStages(secondStageWith("form", "SPLINE"))
                .statusCode(400)
                .body("errors.field", contains("profile.stages[1].form"))
                .body("errors[0].code", equalTo("one-of"))
                .body("errors[0].values.allowed", contains("BETA", "LINEAR"));
        refusedStages(secondStageWith("minC", null))
                .statusCode(400)
                .body("errors.field", contains("profile.stages[1].minC"));
        given().get("/api/crops/c-x").then().statusCode(404);
    }

    private ValidatableResponse refusedStages(List<Map<String, Object>> stages) {
        Map<String, Object> profile = Map.of("stages", stages, "rateSpread", 0.1, "holdDays", 8);
        return nursery.post("/api/crops", Map.of("code", "c-x", "name", "x", "profile", profile))
                .contentType("application/problem+json");
    }

    private static List<Map<String, Object>> secondStageWith(String field, Object value) {
        List<Map<String, Object>> stages = new ArrayList<>();
        stages.add(Nursery.stage("STICK", 7));
        stages.add(with(Nursery.stage("CALLUS", 9), field, value));
        stages.add(Nursery.stage("ROOT", 10));
        return stages;
    }

    private Map<String, Map<String, Object>> itemsByPath() {
        return Map.of(
                "sites", nursery.siteBody("Etc/UTC"),
                "houses", Map.of("code", nursery.house, "site", nursery.site, "name", "North house"),
                "tray-formats", Nursery.formatBody(nursery.trayFormat),
                "crops", Nursery.cropBody(nursery.crop),
                "varieties", Map.of("code", nursery.variety, "crop", nursery.crop, "name", "Grey Morning"));
    }

    private static Map<String, Object> with(Map<String, Object> item, String field, Object value) {
        Map<String, Object> changed = new HashMap<>(item);
        changed.put(field, value);
        return changed;
    }

    private static Map<String, Object> without(Map<String, Object> item, String field) {
        Map<String, Object> less = new HashMap<>(item);
        less.remove(field);
        assertThat(less).hasSize(item.size() - 1);
        return less;
    }

    private static ValidatableResponse put(String path, Object body) {
        return given().contentType(ContentType.JSON).body(body).put(path).then();
    }
}
