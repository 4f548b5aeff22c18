package rootcast.app.wiring;

import static io.restassured.RestAssured.get;
import static org.assertj.core.api.Assertions.assertThat;

import io.quarkus.test.junit.QuarkusTest;
import io.restassured.response.Response;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@QuarkusTest
class KeptByBrowsersTest {

    private static final Pattern FILE = Pattern.compile("/assets/[^\"]+\\.js");

    @ParameterizedTest
    @ValueSource(strings = {"/", "/board", "/batches/N-2648-001"})
    void thePageIsAskedForAgainEachTime(String address) {
        assertThat(get(address).header("Cache-Control")).isEqualTo("no-cache");
    }

    @Test
    void whatItNamesByItsHashIsKeptForGood() {
        Matcher file = FILE.matcher(get("/").asString());
        assertThat(file.find()).isTrue();

        assertThat(get(file.group()).header("Cache-Control")).isEqualTo("public, immutable, max-age=31536000");
    }

    @Test
    void whatIsNotThereIsNotKept() {
        Response missing = get("/assets/of-an-older-version.js");

        assertThat(missing.statusCode()).isEqualTo(404);
        assertThat(missing.header("Cache-Control")).isNull();
    }
}
