package rootcast.app.climate;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class ReadingsOnH2Test extends ReadingsContract {}
