package rootcast.app.climate;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class SensorOnH2Test extends SensorContract {}
