package rootcast.app.rounds;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class RoundsOnH2Test extends RoundsContract {}
