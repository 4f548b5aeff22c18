package rootcast.app.climate;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class GlanceOnH2Test extends GlanceContract {}
