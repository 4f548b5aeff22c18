package rootcast.app.live;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class ProjectorBehindOnH2Test extends ProjectorBehindContract {}
