package rootcast.app.people;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BatchRightsOnH2Test extends BatchRightsContract {}
