package rootcast.app.contract;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import io.quarkus.test.junit.QuarkusTest;
import io.restassured.RestAssured;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * The document that the screens are typed from says what the code does: a change of the interface shows in review.
 *
 * <p>To refresh it after a wanted change: {@code mvn -pl backend/app -am test -Dtest=OpenApiDocumentTest
 * -Dsurefire.failIfNoSpecifiedTests=false -Dopenapi=write}, and commit docs/openapi.json.
 */
@QuarkusTest
class OpenApiDocumentTest {

    private static final Path COMMITTED = Path.of(System.getProperty("repository.root"), "docs", "openapi.json");

    private final ObjectMapper json = new ObjectMapper().enable(SerializationFeature.ORDER_MAP_ENTRIES_BY_KEYS);

    @Test
    void theCommittedDocumentIsThatOfTheCode() throws IOException {
        String document = ofTheCode();
        if ("write".equals(System.getProperty("openapi"))) {
            Files.createDirectories(COMMITTED.getParent());
            Files.writeString(COMMITTED, document);
        }

        assertThat(Files.readString(COMMITTED)).isEqualTo(document);
    }

    /** Whoever writes a program against Rootcast reads it from the server, without a sign-in. */
    @Test
    void theServerHandsOutTheCommittedDocument() throws IOException {
        String text = RestAssured.get("/openapi.json")
                .then()
                .statusCode(200)
                .extract()
                .asString();

        assertThat(text).isEqualTo(Files.readString(COMMITTED));
    }

    @Test
    void theMainPathsAreInIt() throws IOException {
        Map<?, ?> paths = (Map<?, ?>) json.readValue(ofTheCode(), Map.class).get("paths");

        assertThat(paths.keySet().stream().map(Object::toString))
                .contains(
                        "/api/sites",
                        "/api/sites/{code}",
                        "/api/houses",
                        "/api/tray-formats",
                        "/api/crops",
                        "/api/varieties",
                        "/api/readings",
                        "/api/batches",
                        "/api/batches/{id}",
                        "/api/batches/{id}/entries",
                        "/api/board",
                        "/api/live",
                        "/api/orders",
                        "/api/orders/{id}");
    }

    /** Seen red without HonestSchemas and ContractWords. */
    @Test
    void whatIsAlwaysThereIsRequiredAndWhatMayBeNullSaysSo() throws IOException {
        JsonNode schemas = json.readTree(ofTheCode()).at("/components/schemas");

        assertThat(texts(schemas.at("/BatchView/required"))).contains("id", "stage", "trays", "lastCount");
        assertThat(schemas.at("/BatchView/properties/lastCount/anyOf/1/type").asText())
                .isEqualTo("null");
        assertThat(texts(schemas.at("/OutlookView/properties/missingHours/type")))
                .doesNotContain("null");
        assertThat(texts(schemas.at("/BatchWire/required")))
                .contains("site", "trays")
                .doesNotContain("plants");
        assertThat(texts(schemas.at("/BatchWire/properties/plants/type"))).containsExactly("integer", "null");
        assertThat(texts(schemas.at("/TrackRecordWire/properties/coverage/additionalProperties/type")))
                .containsExactly("number", "null");
    }

    @Test
    void wordsThatAreFewAreListed() throws IOException {
        JsonNode schemas = json.readTree(ofTheCode()).at("/components/schemas");

        assertThat(schemas.at("/WarningView/properties/kind/$ref").asText())
                .isEqualTo("#/components/schemas/WarningKind");
        assertThat(texts(schemas.at("/WarningKind/enum"))).contains("dry-down", "over-misting");
        assertThat(texts(schemas.at("/LossCause/enum"))).contains("rot").doesNotContain("count-difference");
    }

    @Test
    void everyWriteSaysWhatItAnswers() throws IOException {
        JsonNode paths = json.readTree(ofTheCode()).at("/paths");

        assertThat(paths.at("/~1api~1batches~1{id}~1entries/post/responses/201/content/application~1json/schema/$ref")
                        .asText())
                .isEqualTo("#/components/schemas/Written");
        assertThat(paths.at("/~1api~1orders/post/responses/201/content/application~1json/schema/$ref")
                        .asText())
                .isEqualTo("#/components/schemas/OrderView");
    }

    private static List<String> texts(JsonNode list) {
        List<String> texts = new ArrayList<>();
        list.forEach(each -> texts.add(each.asText()));
        return texts;
    }

    /** Keys in alphabetical order, so that the document does not change with the order of compilation. */
    private String ofTheCode() throws IOException {
        String text = RestAssured.get("/q/openapi?format=json")
                .then()
                .statusCode(200)
                .extract()
                .asString();
        Map<?, ?> document = json.readValue(text, Map.class);
        document.remove("servers"); // names the port of this run
        var indented = new DefaultPrettyPrinter().withObjectIndenter(new DefaultIndenter("  ", "\n"));
        return json.writer(indented).writeValueAsString(document) + "\n";
    }
}
