package rootcast.app.board;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BoardOnH2Test extends BoardContract {}
