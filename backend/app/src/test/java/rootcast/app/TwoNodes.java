package rootcast.app;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import javax.sql.DataSource;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * Two nodes of the packaged PostgreSQL build over one real PostgreSQL. Each of the three can be killed or stopped and
 * started again, on its port and with what it had stored.
 */
final class TwoNodes implements AutoCloseable {

    private static final int NODES = 2;
    private static final String DATABASE = "postgres";

    private final Path folder;
    private final List<String> settings;
    private final int databasePort = RunningJar.freePort();
    private final int[] ports =
            IntStream.range(0, NODES).map(any -> RunningJar.freePort()).toArray();
    private final RunningJar[] nodes = new RunningJar[NODES];
    private EmbeddedPostgres database;

    /**
     * Starts all three and waits until both nodes say that they are ready.
     *
     * @param folder   for the database and the nodes' logs
     * @param settings more of them for both nodes, as {@code -Dname=value}
     */
    static TwoNodes start(Path folder, String... settings) throws IOException {
        TwoNodes all = new TwoNodes(folder, List.of(settings));
        try {
            all.startDatabase();
            List<CompletableFuture<Void>> starting = IntStream.range(0, NODES)
                    .mapToObj(node -> CompletableFuture.runAsync(() -> all.startNode(node)))
                    .toList();
            starting.forEach(CompletableFuture::join);
            return all;
        } catch (RuntimeException | IOException failed) {
            all.close();
            throw failed;
        }
    }

    private TwoNodes(Path folder, List<String> settings) {
        this.folder = folder;
        this.settings = settings;
    }

    RunningJar first() {
        return nodes[0];
    }

    RunningJar second() {
        return nodes[1];
    }

    /** @param number 0 or 1 */
    RunningJar node(int number) {
        return nodes[number];
    }

    /** Starts a node that was killed or stopped; it has the port that it had. */
    void startNode(int number) {
        try {
            Path data = Files.createDirectories(folder.resolve("node-" + number));
            List<String> given = new ArrayList<>(settings);
            given.add("-Dquarkus.datasource.jdbc.url=" + url());
            given.add("-Dquarkus.datasource.username=" + DATABASE);
            nodes[number] = RunningJar.start(System.getProperty("packaged.jar.postgresql"), data, ports[number], given);
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    /** What is committed is on disk before it is said to be, unlike in the embedded server's usual settings. */
    void startDatabase() throws IOException {
        database = EmbeddedPostgres.builder()
                .setPort(databasePort)
                .setDataDirectory(folder.resolve("database"))
                .setCleanDataDirectory(false)
                .setServerConfig("synchronous_commit", "on")
                .start();
    }

    /** Ends every connection and the server; what is in progress is rolled back. */
    void stopDatabase() throws IOException {
        database.close();
    }

    void restartDatabase() throws IOException {
        stopDatabase();
        startDatabase();
    }

    private String url() {
        return "jdbc:postgresql://127.0.0.1:" + databasePort + "/" + DATABASE;
    }

    /** To look past the nodes. */
    DataSource dataSource() {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(url());
        source.setUser(DATABASE);
        return source;
    }

    @Override
    public void close() throws IOException {
        for (RunningJar node : nodes) {
            if (node != null) {
                node.close();
            }
        }
        if (database != null) {
            database.close();
        }
    }
}
