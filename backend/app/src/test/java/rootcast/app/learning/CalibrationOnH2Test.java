package rootcast.app.learning;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class CalibrationOnH2Test extends CalibrationContract {}
