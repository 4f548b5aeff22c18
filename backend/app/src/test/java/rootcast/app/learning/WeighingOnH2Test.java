package rootcast.app.learning;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class WeighingOnH2Test extends WeighingContract {}
