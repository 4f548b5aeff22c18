package rootcast.app.problem;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BadInputOnH2Test extends BadInputContract {}
