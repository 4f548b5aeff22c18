package rootcast.app.rounds;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import rootcast.app.OnPostgres;

@QuarkusTest
@TestProfile(OnPostgres.class)
class RoundHousesOnPostgresTest extends RoundHousesContract {}
