package rootcast.app.availability;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class LastTraysOnH2Test extends LastTraysContract {}
