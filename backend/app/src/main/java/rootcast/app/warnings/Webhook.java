package rootcast.app.warnings;

import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import rootcast.warnings.Warning;

/** Posts each warning as JSON. The id is the same when it is sent again, so that the receiver can tell. */
@ApplicationScoped
public class Webhook implements Channel {

    private static final Duration PATIENCE = Duration.ofSeconds(10);

    @Inject
    WarningsConfig config;

    @Inject
    ObjectMapper json;

    private final HttpClient http = HttpClient.newBuilder()
            .connectTimeout(PATIENCE)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();

    @Override
    public String name() {
        return "webhook";
    }

    @Override
    public boolean isOn() {
        return config.webhook().isPresent();
    }

    @Override
    public void send(WrittenWarning written) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(config.webhook().orElseThrow())
                .timeout(PATIENCE)
                .header("Content-Type", "application/json")
                .header("Idempotency-Key", written.id().toString())
                .POST(HttpRequest.BodyPublishers.ofString(json.writeValueAsString(body(written))))
                .build();
        int status = http.send(request, HttpResponse.BodyHandlers.discarding()).statusCode();
        if (status / 100 != 2) {
            throw new IOException("the receiver answered " + status);
        }
    }

    private static Map<String, Object> body(WrittenWarning written) {
        Warning warning = written.warning();
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("id", written.id());
        body.put("kind", warning.kind().wireName());
        body.put("site", written.site());
        body.put("house", warning.house());
        body.put("batch", warning.batch());
        body.put("since", warning.since());
        body.put("until", warning.until());
        body.put("worst", warning.worst());
        body.put("limit", warning.limit());
        body.put("unit", warning.unit());
        body.put("batches", warning.batches());
        body.put("text", WarningText.of(warning));
        return body;
    }
}
