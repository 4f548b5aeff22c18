package rootcast.app.learning;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import rootcast.app.OnPostgres;

@QuarkusTest
@TestProfile(OnPostgres.class)
class CalibrationOnPostgresTest extends CalibrationContract {}
