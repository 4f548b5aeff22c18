package rootcast.app.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import io.restassured.path.json.JsonPath;
import io.restassured.response.ValidatableResponse;
import jakarta.inject.Inject;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** The round of a site, asked and answered over HTTP. */
abstract class OnRounds {

    @Inject
    HandSetClock time;

    Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    JsonPath round() {
        return Nursery.get("/api/rounds?site=" + nursery.site);
    }

    /** Id of the only item of its kind. */
    String item(String task) {
        List<String> ids = round().getList("findAll { it.task == '" + task + "' }.id");
        assertThat(ids).as(task).hasSize(1);
        return ids.get(0);
    }

    ValidatableResponse done(String item, Map<String, ?> fields) {
        Map<String, Object> body = new HashMap<>(fields);
        body.put("happenedAt", nursery.now().toString());
        return post(item, "done", body);
    }

    ValidatableResponse post(String item, String verb, Map<String, ?> body) {
        return nursery.post("/api/rounds/" + item + "/" + verb, body);
    }
}
