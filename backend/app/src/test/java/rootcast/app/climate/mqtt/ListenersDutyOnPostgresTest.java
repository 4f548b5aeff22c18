package rootcast.app.climate.mqtt;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import rootcast.app.OnPostgres;

@QuarkusTest
@TestProfile(OnPostgres.class)
class ListenersDutyOnPostgresTest extends ListenersDutyContract {}
