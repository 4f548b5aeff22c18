package rootcast.app.people;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.app.WithToken;

/** Somebody at a browser or with a key: sends what they were given and nothing else. */
final class Visitor {

    private static final Pattern COOKIE = Pattern.compile("rootcast-session=([^;]*)");
    private static final ObjectMapper JSON = new ObjectMapper();

    private final URI base;
    private final Map<String, String> headers;
    private final HttpClient http =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    /** What came back. */
    record Answer(int status, String body, List<String> cookies, Map<String, List<String>> headers) {
        JsonPath json() {
            return JsonPath.from(body);
        }

        String type() {
            return json().getString("type");
        }
    }

    private Visitor(URI base, Map<String, String> headers) {
        this.base = base;
        this.headers = headers;
    }

    static Visitor nobody(URI base) {
        return new Visitor(base, Map.of());
    }

    static Visitor withToken(URI base) {
        return withBearer(base, WithToken.TOKEN);
    }

    static Visitor withBearer(URI base, String bearer) {
        return new Visitor(base, Map.of("Authorization", "Bearer " + bearer));
    }

    static Visitor withCookie(URI base, String secret) {
        return new Visitor(base, Map.of("Cookie", "rootcast-session=" + secret));
    }

    Visitor and(String header, String value) {
        Map<String, String> more = new LinkedHashMap<>(headers);
        more.put(header, value);
        return new Visitor(base, more);
    }

    /** Signs in; fails unless that is answered with a cookie. */
    static Visitor signedIn(URI base, String name, String password) {
        return withCookie(base, secretOf(nobody(base).signIn(name, password)));
    }

    static String secretOf(Answer signedIn) {
        Matcher cookie = COOKIE.matcher(String.join("\n", signedIn.cookies()));
        if (signedIn.status() != 204 || !cookie.find()) {
            throw new AssertionError("not signed in: " + signedIn);
        }
        return cookie.group(1);
    }

    Answer signIn(String name, String password) {
        return post("/api/session", Map.of("name", name, "password", password));
    }

    Answer get(String path) {
        return send("GET", path, null);
    }

    Answer post(String path, @Nullable Object body) {
        return send("POST", path, body);
    }

    Answer put(String path, @Nullable Object body) {
        return send("PUT", path, body);
    }

    Answer delete(String path) {
        return send("DELETE", path, null);
    }

    /** A stream that never ends is read as far as its head. */
    Answer send(String method, String path, @Nullable Object body) {
        HttpRequest.Builder request = HttpRequest.newBuilder(base.resolve(path)).timeout(Duration.ofMinutes(2));
        headers.forEach(request::header);
        request.header("Idempotency-Key", UUID.randomUUID().toString());
        if (body == null) {
            request.method(method, HttpRequest.BodyPublishers.noBody());
        } else {
            request.header("Content-Type", "application/json")
                    .method(method, HttpRequest.BodyPublishers.ofString(json(body)));
        }
        try {
            HttpResponse<InputStream> answer = http.send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
            try (InputStream content = answer.body()) {
                boolean stream =
                        answer.headers().firstValue("Content-Type").orElse("").startsWith("text/event-stream");
                return new Answer(
                        answer.statusCode(),
                        stream ? "" : new String(content.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8),
                        answer.headers().allValues("Set-Cookie"),
                        answer.headers().map());
            }
        } catch (IOException failed) {
            throw new java.io.UncheckedIOException(failed);
        } catch (InterruptedException stopped) {
            throw new IllegalStateException(stopped);
        }
    }

    private static String json(Object body) {
        try {
            return JSON.writeValueAsString(body);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
