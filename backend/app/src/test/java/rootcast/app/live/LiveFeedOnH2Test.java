package rootcast.app.live;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class LiveFeedOnH2Test extends LiveFeedContract {}
