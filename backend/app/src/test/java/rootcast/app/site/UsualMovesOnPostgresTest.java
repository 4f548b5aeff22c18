package rootcast.app.site;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import rootcast.app.OnPostgres;

@QuarkusTest
@TestProfile(OnPostgres.class)
class UsualMovesOnPostgresTest extends UsualMovesContract {}
