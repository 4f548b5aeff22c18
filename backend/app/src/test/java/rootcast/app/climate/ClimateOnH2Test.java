package rootcast.app.climate;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class ClimateOnH2Test extends ClimateContract {}
