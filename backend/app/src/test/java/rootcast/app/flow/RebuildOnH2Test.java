package rootcast.app.flow;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class RebuildOnH2Test extends RebuildContract {}
