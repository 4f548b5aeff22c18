package rootcast.app.live;

import io.restassured.path.json.JsonPath;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** An open screen: reads the live feed as a browser does. */
final class LiveScreen implements AutoCloseable {

    /** Long enough for a beat on a machine that does other things; a wait ends with the event, not with the time. */
    private static final long PATIENCE_SECONDS = 60;

    record Event(String id, String name, String data) {
        JsonPath json() {
            return JsonPath.from(data);
        }

        long position() {
            return Long.parseLong(id);
        }
    }

    private final BlockingQueue<Event> heard = new LinkedBlockingQueue<>();
    private final Stream<String> lines;
    private final HttpResponse<Stream<String>> answer;

    private LiveScreen(HttpResponse<Stream<String>> answer) {
        this.answer = answer;
        lines = answer.body();
        Thread reader = new Thread(this::read, "live screen");
        reader.setDaemon(true);
        reader.start();
    }

    static LiveScreen open(URI base, String query, String lastEventId) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(base.resolve("/api/live" + query))
                .timeout(Duration.ofSeconds(PATIENCE_SECONDS))
                .header("Authorization", rootcast.app.WithToken.BEARER)
                .header("Accept", "text/event-stream");
        if (lastEventId != null) {
            request.header("Last-Event-ID", lastEventId);
        }
        HttpClient http =
                HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();
        return new LiveScreen(http.send(request.build(), HttpResponse.BodyHandlers.ofLines()));
    }

    int status() {
        return answer.statusCode();
    }

    String contentType() {
        return answer.headers().firstValue("Content-Type").orElse("");
    }

    Event next() throws InterruptedException {
        Event event = heard.poll(PATIENCE_SECONDS, TimeUnit.SECONDS);
        if (event == null) {
            throw new AssertionError("nothing heard for " + PATIENCE_SECONDS + " s");
        }
        return event;
    }

    /** The first event to come that is wanted; those before it are passed over. */
    Event next(Predicate<Event> wanted) throws InterruptedException {
        Event event = next();
        while (!wanted.test(event)) {
            event = next();
        }
        return event;
    }

    /** Everything up to and including the first wanted event. */
    List<Event> upTo(Predicate<Event> wanted) throws InterruptedException {
        List<Event> events = new ArrayList<>();
        do {
            events.add(next());
        } while (!wanted.test(events.get(events.size() - 1)));
        return events;
    }

    @Override
    public void close() {
        lines.close();
    }

    private void read() {
        String id = "";
        String name = "";
        StringBuilder data = new StringBuilder();
        try {
            for (String line : (Iterable<String>) lines::iterator) {
                if (line.startsWith("id:")) {
                    id = line.substring(3).strip();
                } else if (line.startsWith("event:")) {
                    name = line.substring(6).strip();
                } else if (line.startsWith("data:")) {
                    data.append(line.substring(5));
                } else if (line.isEmpty() && data.length() > 0) {
                    heard.add(new Event(id, name, data.toString()));
                    id = "";
                    name = "";
                    data.setLength(0);
                }
            }
        } catch (java.io.UncheckedIOException closed) {
            heard.add(new Event("", "closed", "{}"));
        }
    }
}
