package rootcast.app;

import io.quarkus.test.junit.QuarkusTestProfile;
import java.util.List;
import java.util.Map;

/**
 * The second database. What holds must hold on both, so each behaviour is written once in an abstract class and run by
 * one subclass without this profile (H2) and one with it. Quarkus runs the classes of one profile after one another, so
 * a whole run starts the application twice.
 */
public class OnPostgres implements QuarkusTestProfile {

    @Override
    public Map<String, String> getConfigOverrides() {
        return Map.of("quarkus.datasource.db-kind", "postgresql");
    }

    @Override
    public List<TestResourceEntry> testResources() {
        return List.of(new TestResourceEntry(PostgresDatabase.class));
    }
}
