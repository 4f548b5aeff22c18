package rootcast.app.lookback;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class LookBackOnH2Test extends LookBackContract {}
