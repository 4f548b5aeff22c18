package rootcast.app.site;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class UsualMovesOnH2Test extends UsualMovesContract {}
