package rootcast.app.climate;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BackfillOnH2Test extends BackfillContract {}
