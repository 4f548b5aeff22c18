package rootcast.app.warnings;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class WarningsOnH2Test extends WarningsContract {}
