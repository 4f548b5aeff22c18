package rootcast.app;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.IntFunction;

/** Many clients that begin at the same moment. */
public final class Clients {

    private final URI base;
    private final HttpClient http =
            HttpClient.newBuilder().version(HttpClient.Version.HTTP_1_1).build();

    public Clients(URI base) {
        this.base = base;
    }

    /** Runs so many pieces of work at once and gives what they gave, in order. */
    public static <T> List<T> together(int many, IntFunction<Callable<T>> work) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(many);
        CountDownLatch start = new CountDownLatch(1);
        try {
            List<Future<T>> running = new ArrayList<>();
            for (int client = 0; client < many; client++) {
                Callable<T> own = work.apply(client);
                running.add(threads.submit(() -> {
                    start.await();
                    return own.call();
                }));
            }
            start.countDown();
            List<T> results = new ArrayList<>();
            for (Future<T> each : running) {
                results.add(each.get());
            }
            return results;
        } catch (ExecutionException failed) {
            throw new IllegalStateException(failed.getCause());
        } finally {
            threads.shutdownNow();
        }
    }

    public HttpResponse<String> post(String path, String key, String json) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(base.resolve(path))
                .timeout(Duration.ofMinutes(2))
                .header("Content-Type", "application/json")
                .header("Authorization", WithToken.BEARER)
                .header("Idempotency-Key", key)
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
        return http.send(request, HttpResponse.BodyHandlers.ofString());
    }
}
