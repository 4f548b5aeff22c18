package rootcast.app;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ConnectException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** The packaged application as a process of its own, on a free port and a data folder that outlives it. */
final class RunningJar implements AutoCloseable {

    private static final Duration PATIENCE = Duration.ofMinutes(4);
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(100);

    private final Process process;
    private final int port;
    private final Path log;
    private final HttpClient http = HttpClient.newBuilder()
            .version(HttpClient.Version.HTTP_1_1)
            .connectTimeout(Duration.ofSeconds(10))
            .build();

    private RunningJar(Process process, int port, Path log) {
        this.process = process;
        this.port = port;
        this.log = log;
    }

    /** Starts it and waits until it says that it is ready. */
    static RunningJar start(Path data) throws IOException {
        return start(data, freePort(), List.of());
    }

    /** @param settings more of them, as {@code -Dname=value} */
    static RunningJar start(Path data, int port, List<String> settings) throws IOException {
        return start(System.getProperty("packaged.jar"), data, port, settings);
    }

    /** @param jar which of the builds */
    static RunningJar start(String jar, Path data, int port, List<String> settings) throws IOException {
        Path log = data.resolve("console-" + System.nanoTime() + ".log");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Drootcast.data=" + data,
                "-Drootcast.token=" + WithToken.TOKEN,
                "-Dquarkus.http.port=" + port));
        Path archive = Path.of(System.getProperty("class.archive"));
        if (Files.exists(archive)) {
            command.add("-XX:SharedArchiveFile=" + archive);
        }
        command.addAll(settings);
        command.addAll(List.of("-jar", jar));
        Process process = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(log.toFile())
                .start();
        RunningJar running = new RunningJar(process, port, log);
        running.awaitReady();
        return running;
    }

    int port() {
        return port;
    }

    /** SIGKILL: no shutdown hook, no flush, nothing. */
    void kill() {
        process.destroyForcibly();
        try {
            if (!process.waitFor(1, TimeUnit.MINUTES)) {
                throw new IllegalStateException("process " + process.pid() + " outlives SIGKILL");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** Asks it to end, as a service manager does, and waits until it has. */
    void stop() {
        process.destroy();
        try {
            if (!process.waitFor(1, TimeUnit.MINUTES)) {
                kill();
                throw new IllegalStateException("process " + process.pid() + " does not end when asked to");
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    /** What it has written to its console. */
    String log() throws IOException {
        return Files.readString(log);
    }

    HttpResponse<String> get(String path) throws IOException, InterruptedException {
        return http.send(
                HttpRequest.newBuilder(uri(path))
                        .timeout(Duration.ofMinutes(1))
                        .header("Authorization", WithToken.BEARER)
                        .build(),
                HttpResponse.BodyHandlers.ofString());
    }

    /** The answer, or empty if none came: then nobody but the server knows whether it was done. */
    Optional<HttpResponse<String>> post(String path, String key, String json) {
        HttpRequest request = HttpRequest.newBuilder(uri(path))
                .timeout(Duration.ofMinutes(1))
                .header("Content-Type", "application/json")
                .header("Authorization", WithToken.BEARER)
                .header("Idempotency-Key", key)
                .POST(HttpRequest.BodyPublishers.ofString(json))
                .build();
        try {
            return Optional.of(http.send(request, HttpResponse.BodyHandlers.ofString()));
        } catch (IOException noAnswer) {
            return Optional.empty();
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    @Override
    public void close() {
        kill();
    }

    private URI uri(String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    private void awaitReady() throws IOException {
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (System.nanoTime() < end) {
            if (!process.isAlive()) {
                break;
            }
            try {
                if (get("/q/health/ready").statusCode() == 200) {
                    return;
                }
            } catch (ConnectException notYet) {
                // it has not opened its port
            } catch (InterruptedException stopped) {
                Thread.currentThread().interrupt();
                break;
            }
            LockSupport.parkNanos(BETWEEN_LOOKS.toNanos());
        }
        kill();
        throw new IllegalStateException("not ready:\n" + Files.readString(log));
    }

    static int freePort() {
        try (ServerSocket any = new ServerSocket(0)) {
            return any.getLocalPort();
        } catch (IOException none) {
            throw new UncheckedIOException(none);
        }
    }
}
