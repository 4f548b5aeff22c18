package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class SetupChangesOnH2Test extends SetupChangesContract {}
