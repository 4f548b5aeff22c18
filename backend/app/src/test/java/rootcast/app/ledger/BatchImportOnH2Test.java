package rootcast.app.ledger;

import io.quarkus.test.junit.QuarkusTest;

@QuarkusTest
class BatchImportOnH2Test extends BatchImportContract {}
