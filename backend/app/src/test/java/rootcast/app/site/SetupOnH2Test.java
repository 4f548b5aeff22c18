package rootcast.app.site;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class SetupOnH2Test extends SetupContract {}
