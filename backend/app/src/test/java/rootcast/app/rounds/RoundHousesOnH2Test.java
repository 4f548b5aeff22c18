package rootcast.app.rounds;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class RoundHousesOnH2Test extends RoundHousesContract {}
