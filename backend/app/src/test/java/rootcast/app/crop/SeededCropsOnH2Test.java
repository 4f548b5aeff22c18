package rootcast.app.crop;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class SeededCropsOnH2Test extends SeededCropsContract {}
